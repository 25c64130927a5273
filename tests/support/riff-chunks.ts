/** A chunk of a file that was read by the letter of the form. */
export interface ReadChunk {
  readonly id: string;
  readonly content: Buffer;
}

export interface ReadForm {
  readonly container: string;
  readonly chunks: readonly ReadChunk[];
  /** What lies behind the form. */
  readonly after: Buffer;
}

/**
 * Reads a RIFF, RF64 or BW64 form that must be without fault: sizes that fit to the byte, padding
 * of zero, ds64 first where there is one. Shares no code with what it checks.
 */
export function readForm(bytes: Buffer): ReadForm {
  const container = bytes.toString('latin1', 0, 4);
  if (bytes.toString('latin1', 8, 12) !== 'WAVE') throw new Error('no WAVE');
  const isLong = container !== 'RIFF';
  if (isLong && bytes.toString('latin1', 12, 16) !== 'ds64') throw new Error('no ds64 first');
  const written = bytes.readUInt32LE(4);
  if (isLong && written !== 0xffffffff) throw new Error('a RIFF size beside ds64');
  const size = isLong ? Number(bytes.readBigUInt64LE(20)) : written;
  const dataSize = isLong ? Number(bytes.readBigUInt64LE(28)) : null;
  const end = 8 + size;
  if (end > bytes.length) throw new Error(`a form to byte ${end} in ${bytes.length}`);
  const chunks: ReadChunk[] = [];
  for (let at = 12; at < end; ) {
    const id = bytes.toString('latin1', at, at + 4);
    const said = bytes.readUInt32LE(at + 4);
    const isLongData = id === 'data' && dataSize !== null && !chunks.some((one) => one.id === id);
    if (isLongData && said !== 0xffffffff) throw new Error('two sizes');
    const length = isLongData ? dataSize : said;
    const from = at + 8;
    if (from + length > end) throw new Error(`${id} to byte ${from + length}, the form to ${end}`);
    if (length % 2 === 1 && bytes[from + length] !== 0) throw new Error(`${id} without padding`);
    chunks.push({ id, content: bytes.subarray(from, from + length) });
    at = from + length + (length % 2);
  }
  return { container, chunks, after: bytes.subarray(end) };
}

/** A cue point with its texts. */
export interface ReadCue {
  readonly name: number;
  readonly frame: number;
  readonly label: string | null;
  readonly length: number;
  readonly note: string | null;
}

/**
 * The marks of a form: from one `cue ` chunk and one list of associated data.
 * @param last how many of them, the last ones, are asked for; they must be without fault
 */
export function readCues({ chunks }: ReadForm, last = Number.POSITIVE_INFINITY): ReadCue[] {
  const [points, ...morePoints] = chunks.filter(({ id }) => id === 'cue ');
  const lists = chunks.filter(
    ({ id, content }) => id === 'LIST' && content.toString('latin1', 0, 4) === 'adtl',
  );
  if (morePoints.length > 0 || lists.length > 1) throw new Error('two lists of marks');
  if (points === undefined) return [];
  const count = points.content.readUInt32LE(0);
  if (points.content.length !== 4 + 24 * count) throw new Error('a wrong number of points');
  const texts = readTexts(lists[0]?.content ?? Buffer.alloc(4));
  const first = Math.max(0, count - last);
  return Array.from({ length: count - first }, (_, index) => {
    const at = 4 + 24 * (first + index);
    const name = points.content.readUInt32LE(at);
    const frame = points.content.readUInt32LE(at + 20);
    if (points.content.readUInt32LE(at + 4) !== frame) throw new Error('two positions');
    if (points.content.toString('latin1', at + 8, at + 12) !== 'data') throw new Error('not data');
    const own = texts.filter(
      ({ content }) => content.length >= 4 && content.readUInt32LE(0) === name,
    );
    const textOf = (id: string): string | null => {
      const found = own.find((text) => text.id === id);
      return found === undefined ? null : terminated(found.content.subarray(4));
    };
    const span = own.find(({ id }) => id === 'ltxt');
    const length = span === undefined ? 0 : span.content.readUInt32LE(4);
    return { name, frame, label: textOf('labl'), length, note: textOf('note') };
  });
}

function readTexts(list: Buffer): ReadChunk[] {
  const texts: ReadChunk[] = [];
  for (let at = 4; at < list.length; ) {
    const length = list.readUInt32LE(at + 4);
    const content = list.subarray(at + 8, at + 8 + length);
    if (content.length !== length) throw new Error('a text beyond its list');
    texts.push({ id: list.toString('latin1', at, at + 4), content });
    at += 8 + length + (length % 2);
  }
  return texts;
}

function terminated(bytes: Buffer): string {
  if (bytes.indexOf(0) !== bytes.length - 1) throw new Error('no zero at the end alone');
  return bytes.toString('latin1', 0, bytes.length - 1);
}
