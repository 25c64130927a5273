import type { PartMotion } from '../analysis/part-motion.js';
import { InputError, type InputErrorCode } from '../errors.js';
import { type SideInput, withSide } from '../open-side.js';
import type { Settings } from '../settings.js';
import { editedFrames } from './edited-frames.js';
import { measureReadings } from './measure-readings.js';
import type { Measuring } from './measured-sound.js';

/** A stretch of a side to measure; plain data, as is what comes back: they cross threads. */
export interface MeasureJob extends Omit<Measuring, 'program'> {
  readonly input: SideInput;
  readonly settings: Settings;
  /** Where the bytes of sound that are done are added up; null where nobody waits for them. */
  readonly progress: BigInt64Array | null;
}

/** A result, or why a file is not fit: an InputError would lose its class on the way. */
export type Measured =
  | { readonly motions: readonly PartMotion[] }
  | {
      readonly refusal: {
        readonly path: string;
        readonly code: InputErrorCode;
        readonly message: string;
      };
    };

export async function measureJob(job: MeasureJob): Promise<Measured> {
  try {
    return { motions: await measureSide(job) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { path, code, message } = error;
    return { refusal: { path, code, message } };
  }
}

async function measureSide(job: MeasureJob): Promise<PartMotion[]> {
  const { input, settings, readings, edits, progress } = job;
  return await withSide(input, settings, async ({ source, analysed, bytesPerFrame }) =>
    measureReadings(
      editedFrames(source, edits, analysed),
      readings.map(({ baked, part }) => ({ settings: { ...analysed, ...baked }, part })),
      (frames) => {
        const bytes = BigInt(Math.round(frames * bytesPerFrame));
        if (progress !== null) Atomics.add(progress, 0, bytes);
      },
    ),
  );
}
