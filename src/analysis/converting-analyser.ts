import type { Settings } from '../settings.js';
import type { MotionAnalyser } from './analyse.js';
import { convertSamples } from './convert-samples.js';
import { KernelAnalyser } from './kernel/kernel-analyser.js';
import type { MotionSummary } from './motion.js';
import { ProgramSummer, programChecks } from './program-checks.js';
import { RateConverter } from './rate-converter.js';
import { frameBytes, type SampleFormat } from './sample-format.js';
import type { Stereo } from './stereo.js';

/** What the kernel is given instead of a rate of neither family. */
const CONVERTED_RATE = 48_000;

/** The one pass over a program at a rate of neither family, brought to 48 kHz first. */
export class ConvertingAnalyser implements MotionAnalyser {
  readonly #format: SampleFormat;
  readonly #inner: KernelAnalyser;
  readonly #converter: RateConverter;
  readonly #summer: ProgramSummer;
  #pushed = 0;

  private constructor(format: SampleFormat, inner: KernelAnalyser) {
    this.#format = format;
    this.#inner = inner;
    this.#converter = new RateConverter(format.sampleRate, CONVERTED_RATE);
    this.#summer = new ProgramSummer(format);
  }

  static async create(
    format: SampleFormat,
    frames: number,
    settings: Settings,
  ): Promise<ConvertingAnalyser> {
    const durationSeconds = frames / format.sampleRate;
    const entry = {
      format: {
        encoding: 'float',
        bitDepth: 64,
        channels: format.channels,
        sampleRate: CONVERTED_RATE,
      },
      frames: Math.ceil(durationSeconds * CONVERTED_RATE),
      durationSeconds,
    } as const;
    return new ConvertingAnalyser(format, await KernelAnalyser.create(entry, settings));
  }

  push(frames: Uint8Array): number {
    const count = frames.length / frameBytes(this.#format);
    const samples = new Float64Array(2 * count);
    const unfit = convertSamples(frames, this.#format, samples);
    if (unfit >= 0) return this.#pushed + unfit;
    const program: Stereo = {
      left: Float64Array.from({ length: count }, (_, n) => samples[2 * n]!),
      right: Float64Array.from({ length: count }, (_, n) => samples[2 * n + 1]!),
    };
    this.#summer.push(program);
    this.#forward(this.#converter.push(program));
    this.#pushed += count;
    return -1;
  }

  finish(): MotionSummary {
    this.#forward(this.#converter.finish());
    const summary = this.#inner.finish();
    return { ...summary, program: programChecks(this.#summer.sums, this.#format, summary.program) };
  }

  #forward({ left, right }: Stereo): void {
    const { channels } = this.#format;
    const frames = new Float64Array(channels * left.length);
    for (let n = 0; n < left.length; n++) {
      frames[channels * n] = left[n]!;
      if (channels === 2) frames[2 * n + 1] = right[n]!;
    }
    this.#inner.push(new Uint8Array(frames.buffer));
  }
}
