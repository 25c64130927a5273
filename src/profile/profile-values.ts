import { DISC_DEFAULTS } from './profile-defaults.js';
import type { ProfileFile } from './profile-file.js';
import { PROFILE_GUIDE } from './profile-guide.js';
import {
  flagOf,
  type MergedProfile,
  mergeProfile,
  type ProfileSources,
  resolveProfile,
} from './resolve-profile.js';
import { valueAt } from './value-at.js';

/** Where a value comes from. */
export type Origin =
  | { readonly from: 'default' }
  /** The default for this size of disc. */
  | { readonly from: 'disc'; readonly disc: 12 | 10 | 7 }
  /** The profile file, and the line in it, from 1 on. */
  | { readonly from: 'file'; readonly line: number | null }
  | { readonly from: 'option'; readonly option: string };

export interface ProfileValue {
  /** As in the guide: a field of `machine` has a point in its name. */
  readonly field: string;
  /** In the notation of a profile; from the file, as it is written there. */
  readonly value: unknown;
  /** Whether it is what furrow would take by itself, wherever it comes from. */
  readonly isDefault: boolean;
  readonly origin: Origin;
}

/** Every value that the sources give, in the guide's order; a UsageError says what is wrong. */
export function profileValues(sources: ProfileSources): ProfileValue[] {
  const settings = resolveProfile(sources);
  const merged = mergeProfile(sources);
  const { profile } = merged;
  const ofDisc = resolveProfile({ flags: { disc: profile.disc } });
  const defaults = { ...ofDisc, disc: resolveProfile().disc };
  return PROFILE_GUIDE.flatMap(({ fields }) =>
    fields.map(([field]) => {
      const path = field.split('.');
      return {
        field,
        value: valueAt(profile, path),
        isDefault: isSame(valueAt(settings, path), valueAt(defaults, path)),
        origin: originOf(path, merged, sources.file ?? null),
      };
    }),
  );
}

/** Whether disc and speed are all that has been said: a forecast for such values is a guess. */
export function areDefaults(values: readonly ProfileValue[]): boolean {
  return values.every(({ field, isDefault, origin }) => {
    if (field === 'disc' || field === 'rpm') return true;
    // That the lathe's own automation is to be judged is a statement, also where it is the default.
    return isDefault && (field !== 'executes' || origin.from === 'default');
  });
}

function originOf(
  path: readonly string[],
  { profile, fromFile, fromFlags }: MergedProfile,
  file: ProfileFile | null,
): Origin {
  const [field = ''] = path;
  if (valueAt(fromFlags, path) !== undefined) {
    return { from: 'option', option: flagOf(field) ?? field };
  }
  if (valueAt(fromFile, path) !== undefined) {
    return { from: 'file', line: file?.lineOf(path) ?? null };
  }
  const { disc } = profile;
  if (field === 'disc' || !Object.hasOwn(DISC_DEFAULTS[disc], field)) return { from: 'default' };
  return { from: 'disc', disc };
}

/** Lengths in different units agree to what the conversion leaves. */
function isSame(value: unknown, other: unknown): boolean {
  if (typeof value !== 'number' || typeof other !== 'number') return value === other;
  return Math.abs(value - other) <= 1e-12 * Math.abs(other);
}
