import type { Settings } from '../settings.js';
import { convertSamples } from './convert-samples.js';
import { familyAnalyser } from './family-analyser.js';
import { JumpList } from './jump-list.js';
import { JumpFinder } from './jumps.js';
import type { PartAnalyser } from './part-analyser.js';
import type { PartMotion } from './part-motion.js';
import { type Part, wholeProgram } from './parts.js';
import { CONVERTED_RATE, type Program } from './program.js';
import { ProgramSummer } from './program-checks.js';
import { RateConverter } from './rate-converter.js';
import { frameBytes, type SampleFormat } from './sample-format.js';
import type { Stereo } from './stereo.js';

/** The one pass over a whole program at a rate of neither family, brought to 48 kHz first. */
export class ConvertingAnalyser implements PartAnalyser {
  readonly #format: SampleFormat;
  readonly #part: Part;
  readonly #inner: PartAnalyser;
  readonly #converter: RateConverter;
  readonly #summer: ProgramSummer;
  readonly #jumps: JumpList;
  readonly #finder: JumpFinder;
  #pushed = 0;

  private constructor(program: Program, part: Part, inner: PartAnalyser) {
    const { format } = program;
    this.#format = format;
    this.#part = part;
    this.#inner = inner;
    this.#converter = new RateConverter(format.sampleRate, CONVERTED_RATE);
    this.#summer = new ProgramSummer(format);
    this.#jumps = new JumpList(program, part);
    this.#finder = new JumpFinder(0, (jump) => this.#jumps.add(jump));
  }

  /** @param part all of the program */
  static async create(
    program: Program,
    part: Part,
    settings: Settings,
  ): Promise<ConvertingAnalyser> {
    const { durationSeconds } = program;
    const converted = {
      format: {
        encoding: 'float',
        bitDepth: 64,
        channels: program.format.channels,
        sampleRate: CONVERTED_RATE,
      },
      frames: Math.ceil(durationSeconds * CONVERTED_RATE),
      durationSeconds,
    } as const;
    const whole = wholeProgram(converted, settings);
    const inner = await familyAnalyser(converted, whole, settings);
    return new ConvertingAnalyser(program, part, inner);
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
    this.#finder.push(program);
    this.#forward(this.#converter.push(program));
    this.#pushed += count;
    return -1;
  }

  finish(): PartMotion {
    this.#forward(this.#converter.finish());
    this.#finder.finish();
    return {
      ...this.#inner.finish(),
      part: this.#part,
      sums: this.#summer.sums,
      jumps: this.#jumps.finish(),
    };
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
