import { findInputs } from '../analysis/find-inputs.js';
import type { SideInput } from '../open-side.js';
import type { ProfileSources } from '../profile/resolve-profile.js';
import type { Failure } from '../report/failure.js';
import { runInputs } from './run-inputs.js';
import { sheetInputs } from './sheet-inputs.js';

/** What the paths of a fit name, in their order: files, and the sides of sheets. */
export async function fitInputs(
  paths: readonly string[],
  sources: ProfileSources,
  cwd: string,
  {
    level,
    allowEmpty,
    follow,
  }: {
    readonly level?: number | undefined;
    readonly allowEmpty: boolean;
    readonly follow: boolean;
  },
): Promise<(SideInput | Failure)[]> {
  if (paths.length === 0) return runInputs([], allowEmpty);
  const inputs: (SideInput | Failure)[] = [];
  let files: string[] = [];
  const takeFiles = async () => {
    // No file is no failure here: a sheet may stand beside it.
    if (files.length > 0) {
      inputs.push(...runInputs(await findInputs(files, { cwd, follow }), allowEmpty));
    }
    files = [];
  };
  for (const path of paths) {
    if (!isSheet(path)) {
      files.push(path);
      continue;
    }
    await takeFiles();
    inputs.push(...(await sheetInputs(path, sources, cwd, { level, lost: 'fitted' })).inputs);
  }
  await takeFiles();
  return inputs;
}

/** A sheet is known by its name, as JSON with or without comments. */
export function isSheet(path: string): boolean {
  return /\.jsonc?$/i.test(path);
}
