import { bandLimitOf, isFamilyRate } from '../analysis/band-limit.js';
import { longerClip } from '../analysis/program-checks.js';
import type { Stereo } from '../analysis/stereo.js';
import type { Tally } from '../analysis/tally.js';
import type { Hertz } from '../units.js';
import { ClippedRuns } from './clipped-runs.js';
import type { ProgramTrack } from './program-side.js';

/** Counts what a program's tally wants of one track's own samples, as they come by. */
export class TrackTally {
  readonly #tally: Tally;
  readonly #track: ProgramTrack;
  readonly #rate: Hertz;
  readonly #runs: ClippedRuns;
  /** Frame of the track, from its origin on, that comes next. */
  #frame: number;
  /** The same behind the halvings, and the rate there. */
  #highFrame: number;
  readonly #highRate: Hertz;

  /**
   * @param rate of the program
   * @param frame at the track's own rate, from its origin on, that comes first
   */
  constructor(tally: Tally, track: ProgramTrack, rate: Hertz, frame: number) {
    this.#tally = tally;
    this.#track = track;
    this.#rate = rate;
    this.#runs = new ClippedRuns(track.file.format);
    this.#frame = frame;
    const { sampleRate } = track.file.format;
    this.#highRate = isFamilyRate(sampleRate) ? bandLimitOf(sampleRate).baseRate : sampleRate;
    this.#highFrame = (frame * this.#highRate) / sampleRate;
  }

  /** Takes the file's next samples. */
  hear(samples: Stereo): void {
    const [from, until] = this.#counted(this.#track.file.format.sampleRate);
    this.#runs.hear(samples, this.#frame, from, until);
    this.#frame += samples.left.length;
  }

  /** Takes what the halvings kept out next. */
  hearHigh({ left, right }: Stereo): void {
    const [from, until] = this.#counted(this.#highRate);
    // A mean over the program's frames, whatever rate it was kept out at.
    const weight = this.#rate / this.#highRate;
    const power = (row: Float64Array) =>
      row
        .subarray(Math.max(0, from - this.#highFrame), Math.max(0, until - this.#highFrame))
        .reduce((sum, value) => sum + weight * value * value, 0);
    this.#tally.ultrasonicPower[0] += power(left);
    this.#tally.ultrasonicPower[1] += power(right);
    this.#highFrame += left.length;
  }

  /** Adds what was counted to the program's tally; once. */
  close(): void {
    const { count, first, longest } = this.#runs.found;
    if (longest.frames > 0) {
      const inProgram = {
        firstFrame: this.#inProgram(longest.firstFrame),
        frames: (longest.frames * this.#rate) / this.#track.file.format.sampleRate,
      };
      this.#tally.longestClip = longerClip(this.#tally.longestClip, inProgram);
    }
    if (count === 0) return;
    const at = this.#inProgram(first);
    const before = this.#tally.firstClipFrame;
    this.#tally.firstClipFrame = before < 0 ? at : Math.min(before, at);
    this.#tally.clippedRuns += count;
  }

  /** Frame of the program at one of the track's own. */
  #inProgram(frame: number): number {
    const { file, originFrame } = this.#track;
    return originFrame + Math.floor((frame * this.#rate) / file.format.sampleRate);
  }

  /** The frames of the track, at a rate, that the tally is about. */
  #counted(rate: Hertz): [from: number, until: number] {
    const frameOf = (frame: number) =>
      Math.ceil(((frame - this.#track.originFrame) * rate) / this.#rate);
    return [frameOf(this.#tally.firstFrame), frameOf(this.#tally.endFrame)];
  }
}
