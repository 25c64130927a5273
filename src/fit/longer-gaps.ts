import type { ProgramSide, ProgramTrack } from '../program/program-side.js';
import type { Seconds } from '../units.js';
import type { QuarterRun } from './moved-motion.js';
import type { EditSpan } from './sound-edit.js';

/** A program whose gaps have become longer by whole quarter turns. */
export interface LongerGaps {
  /** Quarters of the given program, and where they lie now. */
  readonly runs: readonly QuarterRun[];
  /** The seconds that have become longer: what faces them, or faced what was there, is new. */
  readonly touched: readonly EditSpan[];
}

/** How near to whole quarters a gap must grow: half a frame at any rate that there is, and more. */
const WHOLE = 1e-3;

/** Null where it is not only gaps that have grown, or not by whole quarters. */
export function longerGaps(
  before: ProgramSide,
  after: ProgramSide,
  quarterSeconds: Seconds,
): LongerGaps | null {
  const rate = before.format.sampleRate;
  const runs: QuarterRun[] = [];
  const touched: EditSpan[] = [];
  let [from, shift] = [0, 0];
  for (const [place, track] of before.tracks.entries()) {
    const now = after.tracks[place];
    if (now === undefined || !isSameSound(track, now)) return null;
    const exact = (now.startFrame - track.startFrame) / rate / quarterSeconds;
    const quarters = Math.round(exact);
    if (Math.abs(exact - quarters) > WHOLE || quarters < shift) return null;
    if (quarters === shift) continue;
    const ended = before.tracks[place - 1]?.stopFrame ?? 0;
    const cut = Math.ceil(ended / rate / quarterSeconds);
    runs.push({ from, end: cut, to: from + shift });
    touched.push({
      fromSeconds: (after.tracks[place - 1]?.stopFrame ?? 0) / rate,
      untilSeconds: now.startFrame / rate,
    });
    [from, shift] = [cut, quarters];
  }
  return { runs: [...runs, { from, end: Number.POSITIVE_INFINITY, to: from + shift }], touched };
}

function isSameSound(one: ProgramTrack, other: ProgramTrack): boolean {
  return (
    one.file === other.file &&
    one.firstFrame === other.firstFrame &&
    one.endFrame === other.endFrame
  );
}
