import { resolve } from 'node:path';
import type { ProfileSources } from '../profile/resolve-profile.js';
import type { ProgramSide } from '../program/program-side.js';
import type { Failure } from '../report/failure.js';
import { layOutSide } from '../sheet/lay-out-side.js';
import { readSheet } from '../sheet/read-sheet.js';
import { sideSettings } from '../sheet/side-settings.js';

/** What a sheet comes to. */
export interface SheetInputs {
  /** Its path, as the sides tell it. */
  readonly path: string;
  /** Its sides in their order; in place of one, the files that it cannot be made of. */
  readonly inputs: readonly (ProgramSide | Failure)[];
  readonly sideCount: number;
}

/**
 * @param level of all its sides; left out, of the sheet
 * @param lost what a side without one of its files is not, such as `forecast`
 * @throws UsageError for a sheet that is wrong
 */
export async function sheetInputs(
  path: string,
  sources: ProfileSources,
  cwd: string,
  { level, lost }: { readonly level?: number | undefined; readonly lost: string },
): Promise<SheetInputs> {
  const inputs: (ProgramSide | Failure)[] = [];
  const file = await readSheet(resolve(cwd, path), path);
  for (const [index, { name }] of file.sheet.sides.entries()) {
    const laid = await layOutSide(file, index, sideSettings(file, index, sources), level);
    if ('side' in laid) inputs.push(laid.side);
    else {
      const what = `side ${JSON.stringify(name)} of ${path} is not ${lost} without it`;
      for (const { path: track, code, message } of laid.failures) {
        inputs.push({ path: track, code, message: `${message}; ${what}` });
      }
    }
  }
  return { path: file.path, inputs, sideCount: file.sheet.sides.length };
}
