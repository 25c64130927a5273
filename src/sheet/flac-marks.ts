import { startOfSound } from '../analysis/flac-names.js';
import { type ByteSource, readBytes } from '../analysis/wav-source.js';
import type { CuePlace } from './cue-places.js';

const CUE_SHEET = 5;
const MOST_BLOCKS = 4096;
/** Catalogue number, lead-in, flags and reserved bits; then the number of tracks. */
const TRACKS_AT = 395;
/** Of a track: its offset, number, ISRC, flags and reserved bits, and how many index points it has. */
const TRACK_BYTES = 36;
const INDEX_BYTES = 12;

/**
 * Where the tracks of a FLAC file's cue sheet begin, in its own order: at their index point 1, where
 * the music starts, and without one at their own place. The last track is the lead-out. Tracks have
 * no names.
 * Source: RFC 9639, 8.7.
 * @param source of a file whose head is known to be right
 */
export async function flacMarks(source: ByteSource): Promise<CuePlace[]> {
  let at = (await startOfSound(source)) + 4;
  for (let count = 0; count < MOST_BLOCKS && at + 4 <= source.size; count++) {
    const head = Buffer.from(await readBytes(source, at, 4));
    // It may have been cut since its size was asked.
    if (head.length < 4) break;
    const size = head.readUIntBE(1, 3);
    const kind = head[0] ?? 0;
    if ((kind & 0x7f) === CUE_SHEET) {
      return tracksIn(Buffer.from(await readBytes(source, at + 4, size)));
    }
    if (kind >= 0x80) break;
    at += 4 + size;
  }
  return [];
}

function tracksIn(content: Buffer): CuePlace[] {
  const count = content[TRACKS_AT] ?? 0;
  const marks: CuePlace[] = [];
  let at = TRACKS_AT + 1;
  for (let track = 0; track + 1 < count && at + TRACK_BYTES <= content.length; track++) {
    const points = content[at + TRACK_BYTES - 1] ?? 0;
    const end = at + TRACK_BYTES + points * INDEX_BYTES;
    if (end > content.length) break;
    const offset = Number(content.readBigUInt64BE(at));
    marks.push({ sample: offset + musicIn(content.subarray(at + TRACK_BYTES, end)), label: '' });
    at = end;
  }
  return marks;
}

/** Samples from a track's own place to its index point 1. */
function musicIn(points: Buffer): number {
  for (let at = 0; at + INDEX_BYTES <= points.length; at += INDEX_BYTES) {
    if (points[at + 8] === 1) return Number(points.readBigUInt64BE(at));
  }
  return 0;
}
