import { UsageError } from '../errors.js';
import { type ProfileSources, resolveProfile } from '../profile/resolve-profile.js';
import type { Settings } from '../settings.js';
import type { SheetFile } from './read-sheet.js';
import { SIDE_SETTINGS } from './sheet-schema.js';

/**
 * The settings of one side of a sheet: options of the command line over the side's own fields over
 * the profile's.
 * @throws UsageError where they do not go together
 */
export function sideSettings(
  { sheet, placeOf }: SheetFile,
  index: number,
  { file = null, flags = {} }: ProfileSources,
): Settings {
  const side = sheet.sides[index];
  const own = Object.fromEntries(
    Object.entries(side ?? {}).filter(
      ([field, value]) => SIDE_SETTINGS.includes(field) && value !== undefined,
    ),
  );
  try {
    return resolveProfile({ file, flags: { ...own, ...flags } });
  } catch (error) {
    if (!(error instanceof UsageError) || Object.keys(own).length === 0) throw error;
    throw new UsageError(`${placeOf(['sides', index])}: ${error.message}`, { cause: error });
  }
}
