import type { VoidAcceptance } from '../accepted/apply-accepted.js';
import type { SideFit } from '../fit/fit-result.js';
import type { ForecastedFile } from '../forecast-result.js';
import type { Comparison } from '../model/compare-types.js';

/** A side's forecast with what a run adds to it; a plain forecast is one with nothing added. */
export interface ToldFile extends ForecastedFile {
  readonly voidAcceptances?: readonly VoidAcceptance[];
  readonly against?: Comparison;
  /** How loud and how long it can be, and what would mend it. */
  readonly fit?: SideFit;
  /** With the last side of a sheet of several: all of them, in their order. */
  readonly sheetSides?: { readonly sheet: string; readonly files: readonly ForecastedFile[] };
}
