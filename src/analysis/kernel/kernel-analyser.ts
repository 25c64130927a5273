import type { Settings } from '../../settings.js';
import type { Hertz } from '../../units.js';
import { bandLimitOf } from '../band-limit.js';
import { JumpList } from '../jump-list.js';
import { BINS_PER_QUARTER } from '../motion.js';
import { emptyRows } from '../motion-rows.js';
import type { PartAnalyser } from '../part-analyser.js';
import type { PartMotion } from '../part-motion.js';
import { clockOfPart, type Part } from '../parts.js';
import type { Program } from '../program.js';
import { sharedMemory } from '../row-memory.js';
import { frameBytes } from '../sample-format.js';
import type { FrameRun } from '../silent-runs.js';
import { countedSteps } from '../step-powers.js';
import {
  type Collected,
  collect,
  emptyCollection,
  jumpsOf,
  MANY_BINS,
  silentRunsOf,
} from './collect.js';
import { configureKernel } from './configure.js';
import { beginCounting, type Counted, countedBy } from './counted.js';
import { expectRows } from './expect-rows.js';
import { feedKernel, sourceRoom } from './feed.js';
import { type Kernel, releaseKernel } from './load-kernel.js';

/**
 * The one pass over a part of a program, by the kernel. Its definition, number by number, is
 * plain-part.ts.
 */
export class KernelAnalyser implements PartAnalyser {
  readonly room: Uint8Array<ArrayBuffer>;
  readonly #kernel: Kernel;
  readonly #program: Program;
  readonly #part: Part;
  readonly #collected: Collected;
  readonly #rate: Hertz;
  readonly #jumps: JumpList;
  #silentRuns: FrameRun[] = [];
  /** Frame of the program that comes next. */
  #frame: number;
  /** Known once the part's own frames are over. */
  #counted: Counted | null = null;

  /**
   * @param kernel at rest, this analyser's own
   * @param program at a rate of the 44.1 or 48 kHz family
   * @param rows of the part, which its motion then has
   * @throws Error if they are not as many as the part's: its end would be waited for without end
   */
  constructor(
    kernel: Kernel,
    program: Program,
    part: Part,
    settings: Settings,
    rows = emptyRows(part.endQuarter - part.firstQuarter, sharedMemory),
  ) {
    expectRows(rows, part);
    const limit = bandLimitOf(program.format.sampleRate);
    const clock = clockOfPart(part, program, settings);
    this.#kernel = kernel;
    this.#program = program;
    this.#part = part;
    this.#frame = part.readFrom;
    this.#collected = emptyCollection(rows);
    this.#jumps = new JumpList(program, part);
    this.#rate = clock.rate;
    const framesLeft = program.frames - part.readFrom;
    configureKernel(kernel, program.format, framesLeft, settings, limit, clock);
    this.room = sourceRoom(kernel, program.format);
  }

  push(frames: Uint8Array): number {
    const size = frameBytes(this.#program.format);
    for (let at = 0; at < frames.length; ) {
      const bytes = Math.min(frames.length - at, size * (this.#nextMark() - this.#frame));
      const unfit = this.#feed(frames.subarray(at, at + bytes));
      if (unfit >= 0) return this.#frame + unfit;
      at += bytes;
      this.#frame += bytes / size;
      this.#passMark();
    }
    return -1;
  }

  finish(): PartMotion {
    this.#finishQuarters();
    const { bins, left, right, lowBand, stepPowers } = this.#collected;
    const { sums, truePeak, ultrasonicPower } = this.#counted ?? this.#countedSoFar();
    releaseKernel(this.#kernel);
    return {
      part: this.#part,
      bins,
      left,
      right,
      lowBand,
      sums,
      truePeak,
      ultrasonicPower,
      stepPowers: countedSteps(stepPowers, this.#part, this.#program.format),
      jumps: this.#jumps.finish(),
    };
  }

  /** Where what the kernel adds up begins or ends next. */
  #nextMark(): number {
    const { firstFrame, endFrame } = this.#part;
    const next = [firstFrame, endFrame].find((mark) => mark > this.#frame);
    return next ?? Number.POSITIVE_INFINITY;
  }

  #passMark(): void {
    const { firstFrame, endFrame } = this.#part;
    if (this.#frame === firstFrame) {
      beginCounting(this.#kernel);
      this.#silentRuns = [];
    }
    // What the end of the program leaves in the half-bands counts too.
    const isLast = endFrame === this.#program.frames;
    if (this.#frame === endFrame && !isLast) this.#counted = this.#countedSoFar();
  }

  #countedSoFar(): Counted {
    return countedBy(this.#kernel, this.#part, this.#program.format, [...this.#silentRuns]);
  }

  #feed(frames: Uint8Array): number {
    return feedKernel(this.#kernel, this.#program.format, frames, () => {
      this.#listen();
      if (this.#kernel.binCount.value < MANY_BINS) return;
      collect(this.#kernel, this.#collected, this.#rate);
    });
  }

  /** Silence after the program, as long as bins and the low band wait for what comes after. */
  #finishQuarters(): void {
    const { firstQuarter, endQuarter } = this.#part;
    const quarters = endQuarter - firstQuarter;
    const collected = this.#collected;
    collect(this.#kernel, collected, this.#rate);
    while (collected.binCount < quarters * BINS_PER_QUARTER || collected.lowCount < quarters) {
      if (this.#frame < this.#program.frames) throw new Error('a part ends before its quarters');
      this.#kernel.finish(this.#program.format.sampleRate / 10);
      this.#listen();
      collect(this.#kernel, collected, this.#rate);
    }
  }

  /** Takes what the kernel keeps from one push to the next only. */
  #listen(): void {
    const { readFrom } = this.#part;
    if (this.#kernel.jumpCount.value > 0) {
      for (const jump of jumpsOf(this.#kernel, readFrom)) this.#jumps.add(jump);
    }
    if (this.#kernel.silentCount.value > 0) {
      this.#silentRuns.push(...silentRunsOf(this.#kernel, readFrom));
    }
  }
}
