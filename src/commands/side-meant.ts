import { UsageError } from '../errors.js';
import type { SideInput } from '../open-side.js';
import type { ProfileSources } from '../profile/resolve-profile.js';
import type { Failure } from '../report/failure.js';
import { safeText } from '../report/safe-text.js';
import { isSheet } from './fit-inputs.js';
import { sheetInputs } from './sheet-inputs.js';

/**
 * The one side that a path means: a file, or of a sheet the side that is named, or its only one.
 * @returns a failure where it is not there, and a file of the sheet cannot be read
 * @throws UsageError where it has no such side, or several and none is named
 */
export async function sideMeant(
  path: string,
  sources: ProfileSources,
  cwd: string,
  { side, level }: { readonly side?: string | undefined; readonly level?: number | undefined },
): Promise<SideInput | Failure> {
  if (!isSheet(path)) {
    if (side === undefined) return path;
    throw new UsageError(`--side: found it with ${safeText(path)}, expected a side sheet (.json)`);
  }
  const { inputs, sideCount } = await sheetInputs(path, sources, cwd, { level, lost: 'forecast' });
  const sides = inputs.filter((input) => 'tracks' in input);
  const meant = sides.find(({ name }) => name === side);
  if (meant !== undefined) return meant;
  const [only] = sides;
  if (side === undefined && sideCount === 1 && only !== undefined) return only;
  const failure = inputs.find((input) => 'code' in input);
  if (failure !== undefined) return failure;
  const names = sides.map(({ name }) => safeText(name)).join(', ');
  const found = side === undefined ? `found ${sideCount} sides` : `found "${safeText(side)}"`;
  throw new UsageError(`--side: ${found} in ${safeText(path)}, expected one of ${names}`);
}
