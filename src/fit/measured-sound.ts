import { isFamilyRate } from '../analysis/band-limit.js';
import { joinParts } from '../analysis/join-parts.js';
import { type MotionSummary, QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { PartMotion } from '../analysis/part-motion.js';
import { type Part, partsOf } from '../analysis/parts.js';
import type { SampleFormat } from '../analysis/sample-format.js';
import type { ProgramSide } from '../program/program-side.js';
import type { Settings } from '../settings.js';
import type { Baked, Cut } from './apply-remedies.js';
import { longerGaps } from './longer-gaps.js';
import { delayMotion, movedMotion } from './moved-motion.js';
import type { EditSpan, SoundEdit } from './sound-edit.js';
import { splicePart } from './splice-part.js';
import { partsTouched } from './touched-parts.js';

/** One stretch of a side in several ways, in one read. */
export interface Measuring {
  readonly readings: readonly { readonly baked: Baked; readonly part: Part }[];
  readonly edits: readonly SoundEdit[];
  /** The tracks of a sheet's side as they lie; null for a file. */
  readonly program: ProgramSide | null;
}

/** What a whole side can be measured with. */
export type Way = Pick<Cut, 'baked' | 'program'>;

/** Measures a stretch somewhere: here, or in another thread. */
export type Measure = (measuring: Measuring) => Promise<readonly PartMotion[]>;

/** A side as it is. */
interface MeasuredBase {
  readonly motion: MotionSummary;
  readonly program: ProgramSide | null;
}

/** A side's motion under whatever is done to its sound; what was measured once is kept. */
export class MeasuredSound {
  readonly #format: SampleFormat;
  readonly #frames: number;
  readonly #analysed: Settings;
  readonly #measure: Measure;
  readonly #base: MeasuredBase;
  /** By what is baked into them, and how the tracks lie. */
  readonly #wholes = new Map<string, MotionSummary>();
  /** Those of them that were not measured in one read. */
  readonly #spliced = new Set<string>();

  /**
   * @param analysed settings of the analysis as the side is
   * @param base the side as it is, already measured
   */
  constructor(
    format: SampleFormat,
    frames: number,
    analysed: Settings,
    base: MeasuredBase,
    measure: Measure,
  ) {
    this.#format = format;
    this.#frames = frames;
    this.#analysed = analysed;
    this.#measure = measure;
    this.#base = base;
    this.#wholes.set(keyOf({ baked: {}, program: base.program }), base.motion);
  }

  /** Measures the whole side in all these ways at once, those that are not known yet. */
  async measureWhole(ways: readonly Way[]): Promise<void> {
    const unknown = new Map(
      ways.map((way) => [keyOf(way), way] as const).filter(([key]) => !this.#wholes.has(key)),
    );
    const programs = [...new Set([...unknown.values()].map(({ program }) => program))];
    await Promise.all(
      programs.map(async (program) => {
        const own = [...unknown].filter(([, way]) => way.program === program);
        const baked = own.map(([, way]) => way.baked);
        const motions = await this.#read(baked, [], program);
        for (const [at, [key]] of own.entries()) {
          const motion = motions[at];
          if (motion !== undefined) this.#wholes.set(key, motion);
        }
      }),
    );
  }

  /** The motion of a cut; of edited seconds only they are measured anew. */
  async motionOf({ baked, edits, silence, program }: Cut): Promise<MotionSummary> {
    const whole = await this.#whole({ baked, program });
    return delayMotion(await this.#remeasured(whole, edits, { baked, program }, edits), silence);
  }

  /** The same by one whole read of the changed side, nothing spliced. */
  async rendered({ baked, edits, silence, program }: Cut): Promise<MotionSummary> {
    const key = keyOf({ baked, program });
    const known = this.#spliced.has(key) ? undefined : this.#wholes.get(key);
    if (edits.length === 0 && known !== undefined) return delayMotion(known, silence);
    const [motion] = await this.#read([baked], edits, program);
    if (motion === undefined) throw new Error('a side that was not measured');
    return delayMotion(motion, silence);
  }

  async #whole(way: Way): Promise<MotionSummary> {
    const key = keyOf(way);
    const known = this.#wholes.get(key);
    if (known !== undefined) return known;
    const motion = await this.#withLongerGaps(way);
    if (motion === null) {
      await this.measureWhole([way]);
    } else {
      this.#wholes.set(key, motion);
      this.#spliced.add(key);
    }
    const whole = this.#wholes.get(key);
    if (whole === undefined) throw new Error('a side that was not measured');
    return whole;
  }

  /** Where only gaps have grown, only what is near them is measured anew. */
  async #withLongerGaps(way: Way): Promise<MotionSummary | null> {
    const { program: given } = this.#base;
    const { baked, program } = way;
    if (given === null || program === null || given === program) return null;
    if (!isFamilyRate(this.#format.sampleRate)) return null;
    const whole = await this.#whole({ baked, program: given });
    const gaps = longerGaps(given, program, whole.turnSeconds / QUARTERS_PER_TURN);
    if (gaps === null) return null;
    const seconds = program.frames / this.#format.sampleRate;
    return await this.#remeasured(movedMotion(whole, seconds, gaps.runs), gaps.touched, way, []);
  }

  /** A motion with the rows that some seconds can reach measured anew. */
  async #remeasured(
    motion: MotionSummary,
    touched: readonly EditSpan[],
    { baked, program }: Way,
    edits: readonly SoundEdit[],
  ): Promise<MotionSummary> {
    const settings = { ...this.#analysed, ...baked };
    let spliced = motion;
    for (const part of partsTouched(touched, this.#format, this.#framesOf(program), settings)) {
      const [measured] = await this.#measure({ readings: [{ baked, part }], edits, program });
      if (measured !== undefined) spliced = splicePart(spliced, measured);
    }
    return spliced;
  }

  async #read(
    ways: readonly Baked[],
    edits: readonly SoundEdit[],
    program: ProgramSide | null,
  ): Promise<MotionSummary[]> {
    if (ways.length === 0) return [];
    const frames = this.#framesOf(program);
    const settings = ways.map((baked) => ({ ...this.#analysed, ...baked }));
    const parts = settings.map((each) => partsOf(this.#format, frames, each));
    // Their number follows from the length of the program alone.
    const stretches = [...(parts[0] ?? []).keys()];
    const measured = await Promise.all(
      stretches.map(async (stretch) => {
        const readings = ways.flatMap((baked, way) => {
          const part = parts[way]?.[stretch];
          return part === undefined ? [] : [{ baked, part }];
        });
        return await this.#measure({ readings, edits, program });
      }),
    );
    return settings.map((each, way) => {
      const own = measured.flatMap((motions) => {
        const motion = motions[way];
        return motion === undefined ? [] : [motion];
      });
      const motion = joinParts(own, this.#format, frames, each);
      // What is said of the file is said of it as it came.
      return { ...motion, program: this.#base.motion.program };
    });
  }

  #framesOf(program: ProgramSide | null): number {
    return program?.frames ?? this.#frames;
  }
}

function keyOf({ baked, program }: Way): string {
  const { rpm, ellipticalHz, ellipticalOrder, polarity } = baked;
  const tracks = (program?.tracks ?? []).map(({ file, firstFrame, startFrame }) => [
    file.path,
    firstFrame,
    startFrame,
  ]);
  return JSON.stringify([rpm, ellipticalHz, ellipticalOrder, polarity, tracks]);
}
