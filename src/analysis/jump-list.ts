import type { Seconds } from '../units.js';
import type { Jump } from './jumps.js';
import type { Part } from './parts.js';
import type { Program } from './program.js';

/** What comes back as often as FEWEST_ALIKE within so long is the sound itself, at 20 Hz or more. */
const ALIKE_SECONDS: Seconds = 0.15;
const FEWEST_ALIKE = 3;
/** The largest are kept, of the others it is known how many there are. */
const MOST_JUMPS = 16;

/** Jumps of a stretch of a program. */
export interface Jumps {
  readonly count: number;
  /** At most MOST_JUMPS, the largest first. */
  readonly largest: readonly Jump[];
}

/** A jump, and how many others within ALIKE_SECONDS are at least half as large. */
interface Counted extends Jump {
  alike: number;
}

/**
 * Keeps the jumps of a stretch of a program that are no sound of their own: the edges of a square
 * wave or the teeth of a saw are single-sample jumps too. A jump is dropped where at least
 * FEWEST_ALIKE others of its channel within ALIKE_SECONDS before and after it are half as large or
 * larger. So are a defect's that come back as fast. Common practice, no published source.
 */
export class JumpList {
  readonly #alikeFrames: number;
  readonly #lastFrame: number;
  readonly #from: number;
  readonly #until: number;
  /** Those of each channel that a later one may still be like. */
  readonly #recent: [Counted[], Counted[]] = [[], []];
  #jumps: Jumps = { count: 0, largest: [] };

  /** @param part what lies before and after its own frames is only compared with */
  constructor({ format, frames }: Program, { firstFrame, endFrame }: Part) {
    this.#alikeFrames = Math.round(ALIKE_SECONDS * format.sampleRate);
    this.#lastFrame = frames - 1;
    // What begins or ends at once jumps beside its first or last frame.
    this.#from = firstFrame === 0 ? -1 : firstFrame;
    this.#until = endFrame === frames ? frames + 1 : endFrame;
  }

  /** @param jump in the order of time, but for a few frames */
  add(jump: Jump): void {
    const recent = this.#recent[jump.channel];
    while (recent[0] !== undefined && recent[0].frame < jump.frame - this.#alikeFrames) {
      this.#keep(recent.shift()!);
    }
    const counted = { ...jump, alike: 0 };
    for (const other of recent) {
      if (2 * jump.difference >= other.difference) other.alike++;
      if (2 * other.difference >= jump.difference) counted.alike++;
    }
    recent.push(counted);
  }

  finish(): Jumps {
    for (const recent of this.#recent) {
      for (const jump of recent) this.#keep(jump);
      recent.length = 0;
    }
    return this.#jumps;
  }

  #keep({ alike, ...jump }: Counted): void {
    if (alike >= FEWEST_ALIKE || jump.frame < this.#from || jump.frame >= this.#until) return;
    const frame = Math.min(Math.max(jump.frame, 0), this.#lastFrame);
    this.#jumps = addJumps(this.#jumps, { count: 1, largest: [{ ...jump, frame }] });
  }
}

/** Jumps of two stretches of a program as those of one. */
export function addJumps(first: Jumps, next: Jumps): Jumps {
  const largest = [...first.largest, ...next.largest].sort(
    (one, other) =>
      other.difference - one.difference || one.frame - other.frame || one.channel - other.channel,
  );
  return { count: first.count + next.count, largest: largest.slice(0, MOST_JUMPS) };
}
