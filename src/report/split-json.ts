import { toMm } from './numbers.js';
import { sideSplit } from './side-split.js';
import type { SplitJson } from './split-schema.js';
import type { ToldFile } from './told-file.js';

/** What is said of a sheet's sides with the last of them; nothing where there is nothing to say. */
export function splitToJson({ sheetSides }: ToldFile): SplitJson[] {
  if (sheetSides === undefined) return [];
  const split = sideSplit(sheetSides.files);
  if (split === null) return [];
  return [
    {
      sheet: sheetSides.sheet,
      radiusUsedMm: split.takes.map(toMm),
      tracksPerSide: [...split.counts],
      fullestMm: toMm(split.most),
    },
  ];
}
