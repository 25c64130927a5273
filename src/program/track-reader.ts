import type { FrameSource } from '../analysis/frame-source.js';
import { joinStereo, mapStereo, type Stereo } from '../analysis/stereo.js';
import type { Tally } from '../analysis/tally.js';
import type { Settings } from '../settings.js';
import type { Hertz } from '../units.js';
import { DifferenceFilter, ringingSeconds } from './difference-filter.js';
import type { ProgramTrack } from './program-side.js';
import { CHAIN_REACH, type TrackChain, trackChain } from './track-chain.js';
import { fileSamples, shapeSamples } from './track-samples.js';
import { TrackTally } from './track-tally.js';

/** Frames of the file that are asked for at a time. */
const READ_FRAMES = 2 ** 15;
/** Frames before a place from which on a run at full scale is followed. */
const RUN_FRAMES = 64;

/** The frames of a program that a track has a part in: it may sound a little beyond its ends. */
export function soundingFrames(
  track: ProgramTrack,
  settings: Settings,
  rate: Hertz,
): { readonly from: number; readonly until: number } {
  const reach = track.file.format.sampleRate === rate ? 0 : CHAIN_REACH;
  const { elliptical } = track;
  const ringing = elliptical === null ? 0 : ringingSeconds(elliptical, settings);
  return {
    from: track.startFrame - reach,
    until: track.stopFrame + reach + Math.ceil(ringing * rate),
  };
}

/** What one track adds to a program, frame after frame from a place on. */
export class TrackReader {
  readonly #file: FrameSource;
  readonly #track: ProgramTrack;
  readonly #chain: TrackChain;
  readonly #filter: DifferenceFilter | null;
  readonly #tally: TrackTally | null;
  /** Frame at the track's own rate, from its origin on, that comes next. */
  #frame: number;
  #ready: Stereo = { left: new Float64Array(0), right: new Float64Array(0) };
  /** Frames that are there only so that the filters know what was before. */
  #unwanted: number;

  /**
   * @param firstFrame of the program, from which on it is read
   * @param rate of the program
   */
  constructor(
    file: FrameSource,
    track: ProgramTrack,
    settings: Settings,
    firstFrame: number,
    rate: Hertz,
    tally: Tally | null,
  ) {
    const { sampleRate } = track.file.format;
    const { elliptical } = track;
    this.#file = file;
    this.#track = track;
    this.#chain = trackChain(sampleRate, rate, (high) => this.#tally?.hearHigh(high));
    const ringing = elliptical === null ? 0 : ringingSeconds(elliptical, settings);
    const heard = Math.ceil(ringing * rate) + CHAIN_REACH + RUN_FRAMES;
    const place = Math.max(firstFrame - track.originFrame - heard, -CHAIN_REACH);
    const periods = Math.floor(place / this.#chain.period);
    this.#frame = periods * this.#chain.periodFrames;
    this.#unwanted = firstFrame - track.originFrame - periods * this.#chain.period;
    this.#filter =
      elliptical === null || elliptical.corner === null
        ? null
        : new DifferenceFilter(elliptical.corner, elliptical.order, settings, rate);
    this.#tally = tally === null ? null : new TrackTally(tally, track, rate, this.#frame);
  }

  /** The next frames of the program, as far as they are this track's. */
  async take(count: number): Promise<Stereo> {
    const wanted = this.#unwanted + count;
    while (this.#ready.left.length < wanted) await this.#readOn();
    const { left, right } = this.#ready;
    const taken = {
      left: left.subarray(this.#unwanted, wanted),
      right: right.subarray(this.#unwanted, wanted),
    };
    this.#ready = mapStereo(this.#ready, (channel) => channel.subarray(wanted));
    this.#unwanted = 0;
    return taken;
  }

  /** No more frames are wanted. */
  close(): void {
    this.#tally?.close();
  }

  async #readOn(): Promise<void> {
    const from = this.#frame - this.#track.leadFrames;
    const span = { from, until: from + READ_FRAMES };
    const samples = await fileSamples(this.#file, this.#track, span);
    this.#tally?.hear(samples);
    const added = this.#chain.push(shapeSamples(samples, this.#track, span));
    this.#ready = joinStereo(this.#ready, this.#filter?.push(added) ?? added);
    this.#frame += READ_FRAMES;
  }
}
