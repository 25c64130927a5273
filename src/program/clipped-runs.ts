import {
  CLIPPED_RUN,
  fullScale,
  type LongestClip,
  longerClip,
  NO_CLIP,
} from '../analysis/program-checks.js';
import type { SampleFormat } from '../analysis/sample-format.js';
import type { Stereo } from '../analysis/stereo.js';

/**
 * Runs at full scale in a track's own samples, counted as the analysis counts those of a file: where
 * the third sample of one lies.
 */
export class ClippedRuns {
  readonly #full: number;
  /** Float goes on over full scale: what is clipped there shows as a plateau alone. */
  readonly #onlyPlateaus: boolean;
  readonly #channels: readonly Channel[] = [
    { run: 0, before: 0 },
    { run: 0, before: 0 },
  ];
  #count = 0;
  #first = -1;
  #longest = NO_CLIP;

  constructor(format: SampleFormat) {
    this.#full = fullScale(format);
    this.#onlyPlateaus = format.encoding === 'float';
  }

  /** How many there were, where the first of them begins, −1 without one, and the longest. */
  get found(): { readonly count: number; readonly first: number; readonly longest: LongestClip } {
    return { count: this.#count, first: this.#first, longest: this.#longest };
  }

  /**
   * Takes the next samples; those from `from` to before `until` count, of the others only the runs
   * go on.
   * @param frame of the track that the samples begin at, as `from` and `until` count
   */
  hear({ left, right }: Stereo, frame: number, from: number, until: number): void {
    for (const [index, channel] of this.#channels.entries()) {
      this.#follow(channel, index === 0 ? left : right, frame, from, until);
    }
  }

  #follow(
    channel: Channel,
    samples: Float64Array,
    frame: number,
    from: number,
    until: number,
  ): void {
    let { run, before } = channel;
    for (let n = 0; n < samples.length; n++) {
      const value = samples[n] ?? 0;
      if (Math.abs(value) < this.#full) run = 0;
      else {
        run = this.#onlyPlateaus && value !== before ? 1 : run + 1;
        if (frame + n >= from && frame + n < until) this.#file(run, frame + n - run + 1);
      }
      before = value;
    }
    channel.run = run;
    channel.before = before;
  }

  /** Takes a run that has become so long. */
  #file(run: number, first: number): void {
    if (run < CLIPPED_RUN) return;
    this.#longest = longerClip(this.#longest, { firstFrame: first, frames: run });
    if (run > CLIPPED_RUN) return;
    this.#first = this.#count === 0 ? first : Math.min(this.#first, first);
    this.#count++;
  }
}

interface Channel {
  run: number;
  before: number;
}
