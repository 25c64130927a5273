import type { SampleFormat } from '../analysis/sample-format.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import type { HardPassage } from './hardest-passages.js';

/** To lift the cutter, move it to the next diameter and drop it; common practice, no source. */
export const MOVE_SECONDS: Seconds = 10;

/** A passage in the program and in the reel, frames of both. */
export interface ReelPlace {
  readonly passage: HardPassage;
  /** In the program. */
  readonly firstFrame: number;
  readonly endFrame: number;
  /** Of the reel, its first frame of sound. */
  readonly atFrame: number;
}

export interface ReelLayout {
  readonly places: readonly ReelPlace[];
  /** Of the whole reel. */
  readonly frames: number;
  /** Silent frames before and after each passage, which are cut. */
  readonly silentFrames: number;
  /** Between the silence after one and before the next, in which nothing is cut. */
  readonly moveFrames: number;
}

/**
 * Passages one after the other in time order, each with `silentTurns` turns of silence before and
 * after it, and between two of them what it takes to move the cutter, by the clock in the room.
 * @param frames of the program
 */
export function reelLayout(
  passages: readonly HardPassage[],
  { sampleRate }: SampleFormat,
  frames: number,
  { silentTurns, rpm, speedFactor }: Settings,
): ReelLayout {
  const silentFrames = Math.ceil((silentTurns * 60 * sampleRate) / rpm);
  const moveFrames = Math.ceil(MOVE_SECONDS * speedFactor * sampleRate);
  const places: ReelPlace[] = [];
  let atFrame = silentFrames;
  for (const passage of passages) {
    const firstFrame = Math.min(Math.round(passage.fromSeconds * sampleRate), frames);
    const endFrame = Math.min(Math.round(passage.untilSeconds * sampleRate), frames);
    places.push({ passage, firstFrame, endFrame, atFrame });
    atFrame += endFrame - firstFrame + 2 * silentFrames + moveFrames;
  }
  const total = places.length === 0 ? 0 : atFrame - silentFrames - moveFrames;
  return { places, frames: total, silentFrames, moveFrames };
}
