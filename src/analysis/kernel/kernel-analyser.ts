import type { Settings } from '../../settings.js';
import type { Seconds } from '../../units.js';
import type { MotionAnalyser } from '../analyse.js';
import { bandLimitOf, LEAD_FRAMES } from '../band-limit.js';
import { LOW_BAND_DECIMATION } from '../decimate.js';
import { integratedLoudness } from '../loudness.js';
import { LowBandMeter } from '../low-band.js';
import { BINS_PER_QUARTER, type MotionSummary } from '../motion.js';
import { type ProgramSums, programChecks } from '../program-checks.js';
import { frameBytes, type SampleFormat } from '../sample-format.js';
import { type SpiralClock, spiralClock, summaryQuarters } from '../spiral-clock.js';
import { type Collected, collect, emptyCollection } from './collect.js';
import { configureKernel, numbersAt } from './configure.js';
import { feedKernel } from './feed.js';
import { type Kernel, loadKernel } from './load-kernel.js';

/** Decimated frames of the lead, which the low band leaves out. */
const LOW_LEAD = LEAD_FRAMES / LOW_BAND_DECIMATION;

/** A program for the kernel: its format, and how long it is by its own clock. */
export interface Entry {
  /** At a rate of the 44.1 or 48 kHz family. */
  readonly format: SampleFormat;
  readonly frames: number;
  readonly durationSeconds: Seconds;
}

/**
 * The one pass over a program, by the kernel. Its definition, number by number, is
 * plain-motion.ts.
 */
export class KernelAnalyser implements MotionAnalyser {
  readonly #kernel: Kernel;
  readonly #entry: Entry;
  readonly #clock: SpiralClock;
  readonly #quarterCount: number;
  readonly #collected: Collected;
  readonly #lowBand: LowBandMeter;
  #lowLead = LOW_LEAD;
  #pushed = 0;

  private constructor(kernel: Kernel, entry: Entry, settings: Settings) {
    const limit = bandLimitOf(entry.format.sampleRate);
    this.#kernel = kernel;
    this.#entry = entry;
    this.#clock = spiralClock(settings, limit.internalRate);
    this.#quarterCount = summaryQuarters(this.#clock, entry.durationSeconds);
    this.#collected = emptyCollection(this.#quarterCount);
    this.#lowBand = new LowBandMeter(this.#clock, settings.lowBandHz, this.#quarterCount);
    configureKernel(kernel, entry.format, entry.frames, settings, limit, this.#clock);
  }

  static async create(entry: Entry, settings: Settings): Promise<KernelAnalyser> {
    return new KernelAnalyser(await loadKernel(), entry, settings);
  }

  push(frames: Uint8Array): number {
    const unfit = feedKernel(this.#kernel, this.#entry.format, frames, () => this.#take());
    if (unfit >= 0) return this.#pushed + unfit;
    this.#pushed += frames.length / frameBytes(this.#entry.format);
    return -1;
  }

  finish(): MotionSummary {
    while (this.#collected.binCount < this.#quarterCount * BINS_PER_QUARTER) {
      this.#kernel.finish(this.#entry.format.sampleRate / 10);
      this.#take();
    }
    return {
      turnSeconds: this.#clock.turnSeconds,
      durationSeconds: this.#entry.durationSeconds,
      quarterCount: this.#quarterCount,
      ...this.#collected.bins,
      left: this.#collected.left,
      right: this.#collected.right,
      lowBand: this.#lowBand.finish(),
      program: this.#program(),
    };
  }

  #take(): void {
    const kernel = this.#kernel;
    collect(kernel, this.#collected);
    const skipped = Math.min(this.#lowLead, kernel.lowCount.value);
    this.#lowLead -= skipped;
    const low = numbersAt(kernel, kernel.lowFrames.value, 2 * kernel.lowCount.value);
    this.#lowBand.push(low.subarray(2 * skipped));
    kernel.takeLow();
  }

  #program(): MotionSummary['program'] {
    const kernel = this.#kernel;
    const limit = bandLimitOf(this.#entry.format.sampleRate);
    const pair = (address: number): [number, number] => {
      const [left, right] = numbersAt(kernel, address, 2);
      return [left!, right!];
    };
    const at = kernel.sums.value;
    const sums: ProgramSums = {
      frames: this.#entry.frames,
      sum: pair(at),
      square: pair(at + 16),
      cross: pair(at + 32)[0],
      samplePeak: pair(at + 48),
      clippedRuns: kernel.clippedRuns.value,
      firstClipFrame: kernel.firstClipFrame.value,
      identical: kernel.identical.value !== 0,
    };
    const programBase = Math.ceil(this.#entry.frames / 2 ** limit.halvings);
    return programChecks(sums, this.#entry.format, {
      truePeak: pair(kernel.truePeaks.value),
      loudnessLufs: integratedLoudness(this.#steps()),
      ultrasonicMeanSquare: Math.max(...pair(kernel.ultrasonicPower.value)) / programBase,
    });
  }

  /** Power of every 100 ms over the channels; a one-channel file counts its channel once. */
  #steps(): number[] {
    const powers = this.#collected.stepPowers;
    return Array.from({ length: powers.length / 2 }, (_, step) =>
      this.#entry.format.channels === 1
        ? powers[2 * step]!
        : powers[2 * step]! + powers[2 * step + 1]!,
    );
  }
}
