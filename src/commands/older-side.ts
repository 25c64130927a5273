import { resolve } from 'node:path';
import { UsageError } from '../errors.js';
import type { ForecastedFile } from '../forecast-result.js';
import { compareForecasts } from '../model/compare-forecasts.js';
import type { SideInput } from '../open-side.js';
import type { ToldFile } from '../report/told-file.js';
import type { ForecastOptions } from './forecast-options.js';
import { filesOf, type RunInput } from './run-inputs.js';

/** The file of --against. */
export interface OlderSide {
  /** It, to be forecast before the others; none without the option. */
  readonly files: readonly string[];
  /** Whether a forecast is the older side's, and so nothing to tell by itself. */
  readonly takes: (file: ForecastedFile, input: SideInput) => boolean;
  /** A side with what has changed in it. */
  readonly compare: (file: ToldFile) => ToldFile;
}

/** @throws UsageError unless one other file is given */
export function olderSide(
  { against }: ForecastOptions,
  inputs: readonly RunInput[],
  cwd: string,
): OlderSide {
  if (against === undefined) return { files: [], takes: () => false, compare: (file) => file };
  const files = filesOf(inputs);
  if (inputs.length !== 1) {
    throw new UsageError(`--against: found ${inputs.length} files to compare, expected one`);
  }
  if (files.some((file) => resolve(cwd, file) === resolve(cwd, against))) {
    throw new UsageError(`--against: ${against} is the file itself; name an older one`);
  }
  let older: ForecastedFile | null = null;
  return {
    files: [against],
    takes: (file, input) => {
      if (input !== against) return false;
      older = file;
      return true;
    },
    compare: (file) =>
      older === null ? file : { ...file, against: compareForecasts(older, file) },
  };
}
