import type { Settings } from '../settings.js';
import { bandLimitOf, LEAD_FRAMES } from './band-limit.js';
import { LOW_BAND_DECIMATION } from './decimate.js';
import { type Collected, collect, emptyCollection } from './kernel/collect.js';
import { configureKernel, numbersAt } from './kernel/configure.js';
import { type Kernel, loadKernel } from './kernel/load-kernel.js';
import { integratedLoudness } from './loudness.js';
import { LowBandMeter } from './low-band.js';
import { BINS_PER_QUARTER, type MotionSummary } from './motion.js';
import { type ProgramSums, programChecks } from './program-checks.js';
import { frameBytes, type SampleFormat } from './sample-format.js';
import { type SpiralClock, spiralClock, summaryQuarters } from './spiral-clock.js';

/** Takes a program block by block and ends in its motion summary. */
export interface MotionAnalyser {
  /**
   * Takes the next whole raw frames; blocks may have any size and do not show in the result.
   * @returns the first frame of the program that is no finite number or beyond SAMPLE_LIMIT; −1 if
   *   all are fit
   */
  push(frames: Uint8Array): number;
  /** Ends the program. */
  finish(): MotionSummary;
}

/** Decimated frames of the lead, which the low band leaves out. */
const LOW_LEAD = LEAD_FRAMES / LOW_BAND_DECIMATION;

/**
 * The one pass over a program at a rate of the 44.1 or 48 kHz family.
 * Its definition, number by number, is plain-motion.ts.
 * @param frames length of the program
 */
export async function createAnalyser(
  format: SampleFormat,
  frames: number,
  settings: Settings,
): Promise<MotionAnalyser> {
  return new KernelAnalyser(await loadKernel(), format, frames, settings);
}

class KernelAnalyser implements MotionAnalyser {
  readonly #kernel: Kernel;
  readonly #format: SampleFormat;
  readonly #frames: number;
  readonly #clock: SpiralClock;
  readonly #quarterCount: number;
  readonly #collected: Collected;
  readonly #lowBand: LowBandMeter;
  #lowLead = LOW_LEAD;
  #pushed = 0;

  constructor(kernel: Kernel, format: SampleFormat, frames: number, settings: Settings) {
    const limit = bandLimitOf(format.sampleRate);
    this.#kernel = kernel;
    this.#format = format;
    this.#frames = frames;
    this.#clock = spiralClock(settings, limit.internalRate);
    this.#quarterCount = summaryQuarters(this.#clock, frames / format.sampleRate);
    this.#collected = emptyCollection(this.#quarterCount);
    this.#lowBand = new LowBandMeter(this.#clock, settings.lowBandHz, this.#quarterCount);
    configureKernel(kernel, format, frames, settings, limit, this.#clock);
  }

  push(frames: Uint8Array): number {
    const size = frameBytes(this.#format);
    const capacity = Math.floor(this.#kernel.SOURCE_CAPACITY.value / size) * size;
    for (let at = 0; at < frames.length; at += capacity) {
      const part = frames.subarray(at, at + capacity);
      const { memory, sourceBytes } = this.#kernel;
      new Uint8Array(memory.buffer, sourceBytes.value, part.length).set(part);
      const unfit = this.#kernel.push(part.length);
      if (unfit >= 0) return this.#pushed + unfit;
      this.#pushed += part.length / size;
      this.#take();
    }
    return -1;
  }

  finish(): MotionSummary {
    const limit = bandLimitOf(this.#format.sampleRate);
    while (this.#collected.binCount < this.#quarterCount * BINS_PER_QUARTER) {
      this.#kernel.finish(limit.entryRate / 10);
      this.#take();
    }
    return {
      turnSeconds: this.#clock.turnSeconds,
      durationSeconds: this.#frames / this.#format.sampleRate,
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
    const limit = bandLimitOf(this.#format.sampleRate);
    const pair = (address: number): [number, number] => {
      const [left, right] = numbersAt(kernel, address, 2);
      return [left!, right!];
    };
    const at = kernel.sums.value;
    const sums: ProgramSums = {
      frames: this.#frames,
      sum: pair(at),
      square: pair(at + 16),
      cross: pair(at + 32)[0],
      samplePeak: pair(at + 48),
      clippedRuns: kernel.clippedRuns.value,
      firstClipFrame: kernel.firstClipFrame.value,
      identical: kernel.identical.value !== 0,
    };
    const programBase = Math.ceil(this.#frames / 2 ** limit.halvings);
    return programChecks(sums, this.#format, {
      truePeak: pair(kernel.truePeaks.value),
      loudnessLufs: integratedLoudness(this.#steps()),
      ultrasonicMeanSquare: Math.max(...pair(kernel.ultrasonicPower.value)) / programBase,
    });
  }

  /** Power of every 100 ms over the channels; a one-channel file counts its channel once. */
  #steps(): number[] {
    const powers = this.#collected.stepPowers;
    return Array.from({ length: powers.length / 2 }, (_, step) =>
      this.#format.channels === 1 ? powers[2 * step]! : powers[2 * step]! + powers[2 * step + 1]!,
    );
  }
}
