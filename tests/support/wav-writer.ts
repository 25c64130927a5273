/** Builds WAV files for tests: any encoding, container and order of chunks, right or wrong. */

export interface WavFormatOptions {
  encoding?: 'pcm' | 'float';
  bitDepth?: number;
  channels?: number;
  sampleRate?: number;
  /** Writes WAVE_FORMAT_EXTENSIBLE. */
  extensible?: boolean;
  validBits?: number;
  /** Format tag, in place of the one that `encoding` makes. */
  tag?: number;
  blockAlign?: number;
}

export interface WavOptions extends WavFormatOptions {
  container?: 'RIFF' | 'RF64' | 'BW64';
  /** Interleaved words: integers for PCM (8 bits: −128 … 127), floats for float. */
  words: ArrayLike<number>;
  /** Whole chunks before the format, between format and data, and at the end. */
  first?: readonly Uint8Array[];
  between?: readonly Uint8Array[];
  last?: readonly Uint8Array[];
  /** Puts the format chunk behind the data. */
  formatLast?: boolean;
  /** What the data chunk's 32-bit size says, in place of the truth. */
  dataSize?: number;
}

/** The bytes of a whole file; RF64 and BW64 carry the data size in ds64 and 0xFFFFFFFF in place. */
export function wavBytes(options: WavOptions): Uint8Array {
  const { container = 'RIFF', words, first = [], between = [], last = [] } = options;
  const sound = wordBytes(words, options.encoding ?? 'pcm', options.bitDepth ?? 16);
  const long = container !== 'RIFF';
  const data = chunk('data', sound, options.dataSize ?? (long ? 0xffffffff : sound.length));
  const format = formatChunk(options);
  const middle = options.formatLast ? [data, ...between, format] : [format, ...between, data];
  const longSizes = long ? [longSizesChunk(BigInt(sound.length))] : [];
  return riff([...longSizes, ...first, ...middle, ...last], container);
}

/** A file of these chunks. */
export function riff(chunks: readonly Uint8Array[], container = 'RIFF', form = 'WAVE'): Uint8Array {
  const body = joined([ascii(form), ...chunks]);
  const size = container === 'RIFF' ? body.length : 0xffffffff;
  return joined([ascii(container), numberBytes(size, 4), body]);
}

/**
 * One chunk, padded to an even length.
 * @param size what its head says, the truth by default
 */
export function chunk(id: string, body: Uint8Array, size = body.length): Uint8Array {
  return joined([ascii(id), numberBytes(size, 4), body, new Uint8Array(body.length % 2)]);
}

export function formatChunk(options: WavFormatOptions = {}): Uint8Array {
  const { encoding = 'pcm', bitDepth = 16, channels = 2, sampleRate = 44_100 } = options;
  const { extensible = false, validBits = bitDepth } = options;
  const frameBytes = options.blockAlign ?? Math.ceil(bitDepth / 8) * channels;
  const tag = options.tag ?? (encoding === 'pcm' ? 1 : 3);
  const fields: readonly (readonly [value: number, bytes: number])[] = [
    [extensible ? 0xfffe : tag, 2],
    [channels, 2],
    [sampleRate, 4],
    [(sampleRate * frameBytes) % 2 ** 32, 4],
    [frameBytes % 2 ** 16, 2],
    [bitDepth, 2],
  ];
  const plain = joined(fields.map(([value, bytes]) => numberBytes(value, bytes)));
  if (!extensible) return chunk('fmt ', plain);
  const head = [
    numberBytes(22, 2),
    numberBytes(validBits, 2),
    numberBytes(channels === 1 ? 4 : 3, 4),
  ];
  return chunk('fmt ', joined([plain, ...head, subFormat(tag)]));
}

/** KSDATAFORMAT_SUBTYPE of a format tag. Source: WAVEFORMATEXTENSIBLE (from memory). */
function subFormat(tag: number): Uint8Array {
  const end = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];
  return joined([numberBytes(tag, 2), Uint8Array.from(end)]);
}

/** Rows are sizes of further chunks; riffSize and sampleCount are left at 0. */
export function longSizesChunk(
  dataSize: bigint,
  rows: readonly (readonly [id: string, size: bigint])[] = [],
): Uint8Array {
  const table = rows.map(([id, size]) => joined([ascii(id), longBytes(size)]));
  const sizes = [longBytes(0n), longBytes(dataSize), longBytes(0n)];
  return chunk('ds64', joined([...sizes, numberBytes(rows.length, 4), ...table]));
}

/** Interleaved words, little endian. */
export function wordBytes(
  words: ArrayLike<number>,
  encoding: 'pcm' | 'float',
  bitDepth: number,
): Uint8Array {
  const bytes = Math.ceil(bitDepth / 8);
  const view = new DataView(new ArrayBuffer(words.length * bytes));
  for (const [index, word] of Array.from(words).entries()) {
    if (encoding === 'float' && bitDepth === 64) view.setFloat64(index * bytes, word, true);
    else if (encoding === 'float') view.setFloat32(index * bytes, word, true);
    else {
      const unsigned = bytes === 1 ? word + 128 : word;
      for (let byte = 0; byte < bytes; byte++) {
        view.setUint8(index * bytes + byte, Math.floor(unsigned / 256 ** byte) & 0xff);
      }
    }
  }
  return new Uint8Array(view.buffer);
}

export function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

export function ascii(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

function numberBytes(value: number, bytes: number): Uint8Array {
  return Uint8Array.from({ length: bytes }, (_, byte) => Math.floor(value / 256 ** byte) % 256);
}

function longBytes(value: bigint): Uint8Array {
  return Uint8Array.from({ length: 8 }, (_, byte) => Number((value >> BigInt(8 * byte)) & 0xffn));
}
