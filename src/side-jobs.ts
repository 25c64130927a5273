import type { MotionRows, PartFigures } from './analysis/analyse-part.js';
import type { Part } from './analysis/parts.js';
import { compileSparingly } from './compile-sparingly.js';
import { InputError, type InputErrorCode } from './errors.js';
import type { ForecastedFile } from './forecast-result.js';
import {
  forecastFile,
  forecastParts,
  type MeasuredParts,
  measurePart,
  type Request,
  tightestOfParts,
} from './forecast-side.js';
import type { SideForecast } from './model/forecast-types.js';
import type { SideInput } from './open-side.js';
import type { Settings } from './settings.js';

/** What every job says of its side. Jobs and their results are plain data: they cross threads. */
interface Job {
  readonly input: SideInput;
  readonly settings: Settings;
  /** Where the bytes of sound that are done are added up, for whoever waits. */
  readonly progress: BigInt64Array;
}

export interface PartJob extends Job {
  readonly part: Part;
  /** The part's of the side's rows, in memory that threads share: filled in. */
  readonly rows: MotionRows;
}

export interface PartsJob extends Job {
  readonly request: Request;
  readonly measured: MeasuredParts;
  /** Takes the place of the tightest plan's figures, which are another job. */
  readonly tightest?: SideForecast['tightest'];
}

export interface FileJob extends Job {
  readonly request: Request;
}

/** A result, or why the file is not fit: an InputError would lose its class on the way. */
export type Outcome<T> =
  | { readonly value: T }
  | {
      readonly refusal: {
        readonly path: string;
        readonly code: InputErrorCode;
        readonly message: string;
      };
    };

/** What a thread can be given to do for a side; see side-worker.ts and side-pool.ts. */
export interface SideJobs {
  /** Measures one part of a long side. */
  readonly part: (job: PartJob) => Promise<Outcome<PartFigures>>;
  /** Forecasts a side whose parts are measured. */
  readonly parts: (job: PartsJob) => Promise<Outcome<ForecastedFile>>;
  /** The tightest plan of such a side, by itself. */
  readonly tightest: (job: PartsJob) => Promise<Outcome<SideForecast['tightest']>>;
  /** Measures and forecasts a whole side. */
  readonly file: (job: FileJob) => Promise<Outcome<ForecastedFile>>;
}

export const sideJobs: SideJobs = {
  part: async (job) =>
    await outcomeOf(() => measurePart(job.input, job.settings, job.part, job.rows, counted(job))),
  parts: async (job) => {
    compileSparingly();
    return await outcomeOf(() =>
      forecastParts(job.input, job.settings, job.request, job.measured, job.tightest),
    );
  },
  tightest: async (job) => {
    compileSparingly();
    return await outcomeOf(() =>
      tightestOfParts(job.input, job.settings, job.request, job.measured),
    );
  },
  file: async (job) => {
    compileSparingly();
    return await outcomeOf(() => forecastFile(job.input, job.settings, job.request, counted(job)));
  },
};

function counted({ progress }: Job): (bytes: number) => void {
  return (bytes) => {
    Atomics.add(progress, 0, BigInt(bytes));
  };
}

async function outcomeOf<T>(work: () => Promise<T>): Promise<Outcome<T>> {
  try {
    return { value: await work() };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { path, code, message } = error;
    return { refusal: { path, code, message } };
  }
}
