import { isFamilyRate } from '../analysis/band-limit.js';
import { joinParts } from '../analysis/join-parts.js';
import type { MotionSummary } from '../analysis/motion.js';
import type { PartMotion } from '../analysis/part-motion.js';
import { cutPart, type Part, partsOf, wholeProgram } from '../analysis/parts.js';
import { programOf } from '../analysis/program.js';
import type { SampleFormat } from '../analysis/sample-format.js';
import { settlingSeconds } from '../analysis/settling.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import type { Baked, Cut } from './apply-remedies.js';
import { delayMotion } from './delay-motion.js';
import { RAMP_SECONDS, type SoundEdit } from './sound-edit.js';
import { splicePart } from './splice-part.js';

/** One stretch of a side in several ways, in one read. */
export interface Measuring {
  readonly readings: readonly { readonly baked: Baked; readonly part: Part }[];
  readonly edits: readonly SoundEdit[];
}

/** Measures a stretch somewhere: here, or in another thread. */
export type Measure = (measuring: Measuring) => Promise<readonly PartMotion[]>;

/** More than the low band's windows reach beyond a quarter, before and after; see parts.ts. */
const WINDOW_SECONDS: Seconds = 0.25;

/** A side's motion under whatever is done to its sound; what was measured once is kept. */
export class MeasuredSound {
  readonly #format: SampleFormat;
  readonly #frames: number;
  readonly #analysed: Settings;
  readonly #measure: Measure;
  /** By what is baked into them. */
  readonly #wholes = new Map<string, MotionSummary>();

  /**
   * @param analysed settings of the analysis as the side is
   * @param base what they give, already measured
   */
  constructor(
    format: SampleFormat,
    frames: number,
    analysed: Settings,
    base: MotionSummary,
    measure: Measure,
  ) {
    this.#format = format;
    this.#frames = frames;
    this.#analysed = analysed;
    this.#measure = measure;
    this.#wholes.set(keyOf({}), base);
  }

  /** Measures the whole side in all these ways at once, those that are not known yet. */
  async measureWhole(ways: readonly Baked[]): Promise<void> {
    const unknown = ways.filter((baked) => !this.#wholes.has(keyOf(baked)));
    const motions = await this.#read(unknown, []);
    for (const [at, baked] of unknown.entries()) {
      const motion = motions[at];
      if (motion !== undefined) this.#wholes.set(keyOf(baked), motion);
    }
  }

  /** The motion of a cut; of edited seconds only they are measured anew. */
  async motionOf({ baked, edits, silence }: Cut): Promise<MotionSummary> {
    await this.measureWhole([baked]);
    const whole = this.#wholes.get(keyOf(baked));
    if (whole === undefined) throw new Error('a side that was not measured');
    const settings = { ...this.#analysed, ...baked };
    let motion = whole;
    for (const part of this.#partsTouched(edits, settings)) {
      const [measured] = await this.#measure({ readings: [{ baked, part }], edits });
      if (measured !== undefined) motion = splicePart(motion, measured);
    }
    return delayMotion(motion, silence);
  }

  /** The same by one whole read of the changed side, nothing taken from before. */
  async rendered({ baked, edits, silence }: Cut): Promise<MotionSummary> {
    const [motion] = await this.#read([baked], edits);
    if (motion === undefined) throw new Error('a side that was not measured');
    return delayMotion(motion, silence);
  }

  async #read(ways: readonly Baked[], edits: readonly SoundEdit[]): Promise<MotionSummary[]> {
    if (ways.length === 0) return [];
    const settings = ways.map((baked) => ({ ...this.#analysed, ...baked }));
    const parts = settings.map((each) => partsOf(this.#format, this.#frames, each));
    // Their number follows from the length of the program alone.
    const stretches = [...(parts[0] ?? []).keys()];
    const measured = await Promise.all(
      stretches.map(async (stretch) => {
        const readings = ways.flatMap((baked, way) => {
          const part = parts[way]?.[stretch];
          return part === undefined ? [] : [{ baked, part }];
        });
        return await this.#measure({ readings, edits });
      }),
    );
    const { program } = this.#wholes.get(keyOf({})) ?? {};
    return settings.map((each, way) => {
      const own = measured.flatMap((motions) => {
        const motion = motions[way];
        return motion === undefined ? [] : [motion];
      });
      const motion = joinParts(own, this.#format, this.#frames, each);
      // What is said of the file is said of it as it came.
      return program === undefined ? motion : { ...motion, program };
    });
  }

  /** The parts that edits can reach, each once: edits whose reaches meet share one. */
  #partsTouched(edits: readonly SoundEdit[], settings: Settings): Part[] {
    const program = programOf(this.#format, this.#frames);
    const whole = wholeProgram(program, settings);
    if (edits.length === 0) return [];
    if (!isFamilyRate(this.#format.sampleRate)) return [whole];
    const turn = 60 / settings.rpm;
    const quarter = turn / 4;
    const reach = (1 + settings.speedTolerance) * turn + settlingSeconds(settings);
    const spans = edits
      .map(({ fromSeconds, untilSeconds }) => ({
        first: Math.floor((fromSeconds - RAMP_SECONDS - WINDOW_SECONDS) / quarter),
        end: Math.ceil((untilSeconds + RAMP_SECONDS + WINDOW_SECONDS + reach) / quarter),
      }))
      .map(({ first, end }) => ({
        first: Math.max(0, first),
        end: Math.min(end, whole.endQuarter),
      }))
      .filter(({ first, end }) => first < end)
      .sort((a, b) => a.first - b.first);
    const apart: { first: number; end: number }[] = [];
    for (const { first, end } of spans) {
      const last = apart.at(-1);
      if (last !== undefined && first <= last.end) last.end = Math.max(last.end, end);
      else apart.push({ first, end });
    }
    return apart.flatMap(({ first, end }) =>
      cutPart({ ...whole, firstQuarter: first, endQuarter: end }, 1, program, settings),
    );
  }
}

function keyOf({ rpm, ellipticalHz, ellipticalOrder, polarity }: Baked): string {
  return JSON.stringify([rpm, ellipticalHz, ellipticalOrder, polarity]);
}
