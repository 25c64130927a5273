import type { Biquad } from '../analysis/biquad.js';
import type { Stereo } from '../analysis/stereo.js';
import { DifferenceFilter } from '../program/difference-filter.js';
import type { Settings } from '../settings.js';
import type { Hertz, Seconds } from '../units.js';
import { editShare, type SoundEdit, touchedFrames } from './sound-edit.js';
import { bellFilter, shelfFilter } from './tone-filters.js';

/** Periods of a filter's frequency after which it has forgotten that it began in the middle. */
const PERIODS = 6;

/**
 * One edit, block by block. Its filter always begins at the same frame, at rest and before the edit
 * is heard, so that any stretch of the program comes out the same.
 */
export class EditVoice {
  readonly from: number;
  readonly until: number;
  readonly #edit: SoundEdit;
  readonly #rate: Hertz;
  readonly #filter: (block: Stereo) => Stereo;

  /** @param rate of the program's frames */
  constructor(edit: SoundEdit, settings: Settings, rate: Hertz) {
    const touched = touchedFrames(edit, rate);
    this.#edit = edit;
    this.#rate = rate;
    this.#filter = filterOf(edit, settings, rate);
    this.from = Math.max(0, touched.from - Math.ceil(warmSeconds(edit, settings) * rate));
    this.until = touched.until;
  }

  /**
   * Changes what it touches of a block; blocks come one after the other, from `from` on.
   * @param firstFrame of the program, that the block begins with
   */
  apply({ left, right }: Stereo, firstFrame: number): void {
    const start = Math.max(0, this.from - firstFrame);
    const end = Math.min(left.length, this.until - firstFrame);
    if (start >= end) return;
    const dry = { left: left.subarray(start, end), right: right.subarray(start, end) };
    const wet = this.#filter(dry);
    for (const [n, value] of dry.left.entries()) {
      const share = editShare(firstFrame + start + n, this.#edit, this.#rate);
      dry.left[n] = value + share * ((wet.left[n] ?? 0) - value);
      const other = dry.right[n] ?? 0;
      dry.right[n] = other + share * ((wet.right[n] ?? 0) - other);
    }
  }
}

function warmSeconds(edit: SoundEdit, { speedFactor }: Settings): Seconds {
  switch (edit.kind) {
    case 'level':
      return 0;
    case 'elliptical':
      return (PERIODS / edit.corner) * speedFactor;
    case 'bell':
    case 'shelf':
      return PERIODS / edit.frequency;
  }
}

function filterOf(edit: SoundEdit, settings: Settings, rate: Hertz): (block: Stereo) => Stereo {
  switch (edit.kind) {
    case 'level': {
      const gain = 10 ** (edit.gainDb / 20);
      const louder = (row: Float64Array) => row.map((value) => gain * value);
      return ({ left, right }) => ({ left: louder(left), right: louder(right) });
    }
    case 'elliptical': {
      const filter = new DifferenceFilter(edit.corner, edit.order, settings, rate);
      return (block) => filter.push(block);
    }
    case 'bell':
    case 'shelf': {
      const design = edit.kind === 'bell' ? bellFilter : shelfFilter;
      const section = design(edit.frequency, edit.gainDb, rate);
      const [left, right] = [runningBiquad(section), runningBiquad(section)];
      return (block) => ({ left: left(block.left), right: right(block.right) });
    }
  }
}

/** A section that goes on where the block before ended. */
function runningBiquad({ b0, b1, b2, a1, a2 }: Biquad): (row: Float64Array) => Float64Array {
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return (row) =>
    row.map((x) => {
      const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
      [x2, x1, y2, y1] = [x1, x, y1, y];
      return y;
    });
}
