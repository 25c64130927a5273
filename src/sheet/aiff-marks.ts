import { type ByteSource, readBytes } from '../analysis/wav-source.js';
import { type CuePlace, labelText } from './cue-places.js';

/** Marks are texts; what is longer is something else, or a lie. */
const MOST_BYTES = 2 ** 24;
const MOST_CHUNKS = 4096;
/** Of a mark: its number, its position, and the length of its name. */
const LEAST_BYTES = 7;

/**
 * The marks of an AIFF file, in its own order: those of its first `MARK` chunk. A number of marks
 * that is more than the chunk holds is not believed.
 * Source: Audio Interchange File Format 1.3, 6.0 (from memory).
 * @param source of a file whose head is known to be right
 */
export async function aiffMarks(source: ByteSource): Promise<CuePlace[]> {
  let at = 12;
  for (let count = 0; count < MOST_CHUNKS && at + 8 <= source.size; count++) {
    const head = Buffer.from(await readBytes(source, at, 8));
    // It may have been cut since its size was asked.
    if (head.length < 8) break;
    const size = head.readUInt32BE(4);
    if (head.toString('latin1', 0, 4) === 'MARK' && size <= MOST_BYTES) {
      return marksIn(Buffer.from(await readBytes(source, at + 8, size)));
    }
    at += 8 + size + (size % 2);
  }
  return [];
}

function marksIn(content: Buffer): CuePlace[] {
  const count = content.length < 2 ? 0 : content.readUInt16BE(0);
  const marks: CuePlace[] = [];
  let at = 2;
  while (marks.length < count && at + LEAST_BYTES <= content.length) {
    const length = content[at + 6] ?? 0;
    const name = content.subarray(at + LEAST_BYTES, at + LEAST_BYTES + length);
    marks.push({ sample: content.readUInt32BE(at + 2), label: labelText(name) });
    // The length and the name after it are together even.
    at += 6 + length + 1 + ((length + 1) % 2);
  }
  return marks;
}
