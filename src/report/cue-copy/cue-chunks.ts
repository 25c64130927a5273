import type { WavFile } from '../../analysis/wav-file.js';
import { OutputError } from '../../errors.js';
import { safeText } from '../safe-text.js';
import { asciiText } from './ascii-text.js';
import { chunkBytes } from './chunk-bytes.js';
import type { CueMark } from './cue-mark.js';
import { CUE_BYTES, type ExistingCues } from './existing-cues.js';

/** Frames that 32 bits can count. */
const LAST_FRAME = 0xffffffff;
/** The same in bytes of texts after the name: length, purpose, country, language, dialect, page. */
const SPAN_BYTES = 20;

/** What the marks lie in. */
type MarkedFile = Pick<WavFile, 'path' | 'frames'>;

/**
 * The `cue ` chunk and the list of associated data that hold the points and texts of a file and
 * our marks after them, in time order: a label (`labl`) for each, a length (`ltxt`) for those that
 * last, a note (`note`) for those that have one. All labels come first, then all lengths: there are
 * readers that stop at the first text that is no label. Nothing where there are neither.
 * Source: as in existing-cues.ts. A cue point's sample offset counts frames, from the first of the
 * data chunk. The purpose `rgn ` of a length is common practice, no published source.
 */
export function cueChunks(
  existing: ExistingCues,
  marks: readonly CueMark[],
  file: MarkedFile,
): Uint8Array {
  const ordered = [...marks].sort((a, b) => a.frame - b.frame);
  const points = [...existing.points];
  const [labels, spans, notes]: [Uint8Array[], Uint8Array[], Uint8Array[]] = [[], [], []];
  let name = 0;
  for (const mark of ordered) {
    checkMark(mark, file);
    do name += 1;
    while (existing.names.has(name));
    points.push(cuePoint(name, mark.frame));
    labels.push(chunkBytes('labl', namedText(name, mark.label)));
    if (mark.length > 0) spans.push(chunkBytes('ltxt', span(name, mark.length)));
    if (mark.note !== '') notes.push(chunkBytes('note', namedText(name, mark.note)));
  }
  const { labels: oldLabels, texts: oldTexts } = existing;
  const texts = [...oldLabels, ...labels, ...oldTexts, ...spans, ...notes];
  if (points.length === 0 && texts.length === 0) return new Uint8Array(0);
  const list = Buffer.concat([Buffer.from('adtl', 'latin1'), ...texts]);
  return Buffer.concat([
    chunkBytes('cue ', Buffer.concat([numbers(points.length), ...points])),
    chunkBytes('LIST', list),
  ]);
}

function checkMark({ frame, length }: CueMark, file: MarkedFile): void {
  const isWhole = Number.isInteger(frame) && Number.isInteger(length);
  if (!isWhole || frame < 0 || length < 0 || frame + length > file.frames) {
    throw new RangeError(`a mark at frame ${frame} of ${length} frames, in ${file.frames}`);
  }
  if (frame + length <= LAST_FRAME) return;
  const message = `${safeText(file.path)}: no mark can lie beyond frame ${LAST_FRAME}`;
  throw new OutputError(`${message}, and one would at ${frame + length}`);
}

/** Position in play order and sample offset are the same without a playlist. */
function cuePoint(name: number, frame: number): Uint8Array {
  const point = numbers(name, frame, 0, 0, 0, frame);
  point.set(Buffer.from('data', 'latin1'), 8);
  if (point.length !== CUE_BYTES) throw new Error('a cue point of another length');
  return point;
}

/** A name and a text that ends with a zero. */
function namedText(name: number, text: string): Uint8Array {
  return Buffer.concat([numbers(name), Buffer.from(`${asciiText(text)}\0`, 'latin1')]);
}

function span(name: number, length: number): Uint8Array {
  const bytes = new Uint8Array(SPAN_BYTES);
  bytes.set(numbers(name, length));
  bytes.set(Buffer.from('rgn ', 'latin1'), 8);
  return bytes;
}

/** Unsigned numbers of 32 bits. */
function numbers(...values: readonly number[]): Uint8Array {
  const view = new DataView(new ArrayBuffer(4 * values.length));
  for (const [index, value] of values.entries()) view.setUint32(4 * index, value, true);
  return new Uint8Array(view.buffer);
}
