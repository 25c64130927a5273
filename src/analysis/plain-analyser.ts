import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { appendParts } from './append-parts.js';
import { convertSamples } from './convert-samples.js';
import type { PartAnalyser } from './part-analyser.js';
import type { PartMotion } from './part-motion.js';
import { cutPart, type Part } from './parts.js';
import { plainPart } from './plain-motion.js';
import type { Program } from './program.js';
import { frameBytes } from './sample-format.js';
import type { Stereo } from './stereo.js';

/**
 * What the plain definition takes at a time at least: it holds some twenty rows of doubles over it.
 */
const PIECE_SECONDS: Seconds = 6;

/**
 * The one pass over a part by its plain definition, for where the kernel cannot run: piece after
 * piece, so that memory does not grow with the part.
 */
export class PlainAnalyser implements PartAnalyser {
  readonly #program: Program;
  readonly #part: Part;
  readonly #settings: Settings;
  readonly #pieces: Part[];
  readonly #done: PartMotion[] = [];
  /** Interleaved frames of the program from `#first` on, of which so many are there. */
  #samples = new Float64Array(0);
  #first: number;
  #length = 0;

  constructor(program: Program, part: Part, settings: Settings) {
    this.#program = program;
    this.#part = part;
    this.#settings = settings;
    this.#first = part.readFrom;
    const seconds = (part.endFrame - part.firstFrame) / program.format.sampleRate;
    this.#pieces = [...cutPart(part, Math.ceil(seconds / PIECE_SECONDS), program, settings)];
  }

  push(frames: Uint8Array): number {
    const { format } = this.#program;
    const count = frames.length / frameBytes(format);
    this.#makeRoom(count);
    const room = this.#samples.subarray(2 * this.#length);
    const unfit = convertSamples(frames, format, room);
    if (unfit >= 0) return this.#first + this.#length + unfit;
    this.#length += count;
    this.#measure(false);
    return -1;
  }

  finish(): PartMotion {
    this.#measure(true);
    return { ...appendParts(this.#done), part: this.#part };
  }

  #makeRoom(count: number): void {
    const needed = 2 * (this.#length + count);
    if (needed <= this.#samples.length) return;
    const longer = new Float64Array(2 * needed);
    longer.set(this.#samples.subarray(0, 2 * this.#length));
    this.#samples = longer;
  }

  /** Measures the pieces that are heard; the last one waits for the end, whatever may still come. */
  #measure(isOver: boolean): void {
    for (let piece = this.#pieces[0]; piece !== undefined; piece = this.#pieces[0]) {
      const isLast = this.#pieces.length === 1;
      const end = this.#first + this.#length;
      if (!isOver && (isLast || end < piece.readUntil)) return;
      const heard = this.#framesBetween(piece.readFrom, isLast ? end : piece.readUntil);
      this.#done.push(plainPart(heard, this.#program, piece, this.#settings));
      this.#pieces.shift();
      this.#forget(this.#pieces[0]?.readFrom ?? piece.readUntil);
    }
  }

  #framesBetween(from: number, until: number): Stereo {
    const channel = (of: 0 | 1): Float64Array =>
      Float64Array.from(
        { length: until - from },
        (_, n) => this.#samples[2 * (from - this.#first + n) + of]!,
      );
    return { left: channel(0), right: channel(1) };
  }

  #forget(until: number): void {
    const unneeded = Math.min(until - this.#first, this.#length);
    this.#samples.copyWithin(0, 2 * unneeded, 2 * this.#length);
    this.#first += unneeded;
    this.#length -= unneeded;
  }
}
