import { resolve } from 'node:path';
import { findInputs } from '../analysis/find-inputs.js';
import type { SideInput } from '../open-side.js';
import type { ProfileSources } from '../profile/resolve-profile.js';
import type { Failure } from '../report/failure.js';
import { layOutSide } from '../sheet/lay-out-side.js';
import { readSheet } from '../sheet/read-sheet.js';
import { sideSettings } from '../sheet/side-settings.js';
import { runInputs } from './run-inputs.js';

/** What the paths of a fit name, in their order: files, and the sides of sheets. */
export async function fitInputs(
  paths: readonly string[],
  sources: ProfileSources,
  cwd: string,
  { level, allowEmpty }: { readonly level?: number | undefined; readonly allowEmpty: boolean },
): Promise<(SideInput | Failure)[]> {
  if (paths.length === 0) return runInputs([], allowEmpty);
  const inputs: (SideInput | Failure)[] = [];
  let files: string[] = [];
  const takeFiles = async () => {
    // No file is no failure here: a sheet may stand beside it.
    if (files.length > 0) inputs.push(...runInputs(await findInputs(files, { cwd }), allowEmpty));
    files = [];
  };
  for (const path of paths) {
    if (!isSheet(path)) {
      files.push(path);
      continue;
    }
    await takeFiles();
    inputs.push(...(await sidesOf(path, sources, cwd, level)));
  }
  await takeFiles();
  return inputs;
}

/** A sheet is known by its name, as JSON with or without comments. */
function isSheet(path: string): boolean {
  return /\.jsonc?$/i.test(path);
}

async function sidesOf(
  path: string,
  sources: ProfileSources,
  cwd: string,
  level: number | undefined,
): Promise<(SideInput | Failure)[]> {
  const inputs: (SideInput | Failure)[] = [];
  const file = await readSheet(resolve(cwd, path), path);
  for (const [index, { name }] of file.sheet.sides.entries()) {
    const laid = await layOutSide(file, index, sideSettings(file, index, sources), level);
    if ('side' in laid) inputs.push(laid.side);
    else {
      const lost = `; side ${JSON.stringify(name)} of ${path} is not fitted without it`;
      for (const { path: track, code, message } of laid.failures) {
        inputs.push({ path: track, code, message: `${message}${lost}` });
      }
    }
  }
  return inputs;
}
