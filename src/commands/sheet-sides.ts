import type { ForecastedFile } from '../forecast-result.js';
import type { SideInput } from '../open-side.js';
import type { ToldFile } from '../report/told-file.js';

/** Adds to the last side of a sheet all of its sides. */
export type AddSheetSides = (file: ForecastedFile, input: SideInput) => ToldFile;

/**
 * Gathers the sides of each sheet as they are told. What is to be said of all of a record is said
 * with the last; of a sheet with a side that failed it is not said.
 * @param counts how many sides each sheet has, by its path as inputs have it
 */
export function sheetSides(counts: ReadonlyMap<string, number>): AddSheetSides {
  const told = new Map<string, ForecastedFile[]>();
  return (file, input) => {
    if (typeof input === 'string') return file;
    const { sheet } = input;
    // The motion is large, and what is said of a record needs none.
    const files = [...(told.get(sheet) ?? []), { ...file, motion: null }];
    told.set(sheet, files);
    const count = counts.get(sheet) ?? 0;
    return count > 1 && files.length === count ? { ...file, sheetSides: { sheet, files } } : file;
  };
}
