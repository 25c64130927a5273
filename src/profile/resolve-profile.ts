import type * as z from 'zod';
import { UsageError } from '../errors.js';
import type { Settings } from '../settings.js';
import { ASKED_ONCE } from './asked-once.js';
import { fieldName } from './field-name.js';
import { issueTexts } from './issue-text.js';
import { COMMON_DEFAULTS, DISC_DEFAULTS } from './profile-defaults.js';
import type { ProfileFile } from './profile-file.js';
import { brokenRules } from './profile-rules.js';
import {
  KNOWN_FIELDS,
  type Profile,
  type ProfileFields,
  profileFileSchema,
  profileSchema,
} from './profile-schema.js';
import { toSettings } from './to-settings.js';

export interface ProfileSources {
  /** The profile file, if there is one. */
  readonly file?: ProfileFile | null;
  /** What the command line sets, in the notation of a profile; it wins over the file. */
  readonly flags?: Readonly<Record<string, unknown>>;
}

/** What the sources give, each field in the notation of a profile. */
export interface MergedProfile {
  readonly profile: Profile;
  readonly fromFile: ProfileFields;
  readonly fromFlags: ProfileFields;
}

/**
 * Flags over profile file over the defaults of the disc's size, checked as a whole, in SI, frozen.
 * Everything that is wrong is said at once, in one UsageError: where, found, expected.
 */
export function resolveProfile(sources: ProfileSources = {}): Settings {
  const { file = null } = sources;
  const { profile, fromFile, fromFlags } = mergeProfile(sources);
  const given = { ...fromFile, ...fromFlags };
  const settings = toSettings(profile, given.executes !== undefined);
  const broken = brokenRules(profile, settings, (field) => Object.hasOwn(given, field));
  const texts = broken.map(({ fields, text }) => {
    const flagged = fields.find((field) => Object.hasOwn(fromFlags, field));
    const filed = fields.find((field) => Object.hasOwn(fromFile, field)) ?? fields[0];
    return `${flagOf(flagged) ?? placeInFile(file, filed === undefined ? [] : [filed])}: ${text}`;
  });
  if (texts.length > 0) throw new UsageError(texts.join('\n'));
  return settings;
}

/**
 * Flags over profile file over the defaults of the disc's size. Each field has been looked at by
 * itself, a UsageError says what is wrong with it; whether they go together has not.
 */
export function mergeProfile({ file = null, flags = {} }: ProfileSources): MergedProfile {
  const fromFile = checked(file === null ? {} : file.value, (path) => placeInFile(file, path));
  const fromFlags = checked(flags, (path) => flagOf(path[0]) ?? path.join('.'));
  const disc = fromFlags.disc ?? fromFile.disc ?? 12;
  const merged = {
    ...COMMON_DEFAULTS,
    ...DISC_DEFAULTS[disc],
    ...fromFile,
    ...fromFlags,
    machine: { ...COMMON_DEFAULTS.machine, ...fromFile.machine, ...fromFlags.machine },
  };
  return { profile: profileSchema.parse(merged, ASKED_ONCE), fromFile, fromFlags };
}

function checked(value: unknown, placeOf: (path: readonly PropertyKey[]) => string): ProfileFields {
  const result: z.ZodSafeParseResult<ProfileFields> = profileFileSchema.safeParse(
    value,
    ASKED_ONCE,
  );
  if (result.success) return result.data;
  throw new UsageError(issueTexts(result.error, value, KNOWN_FIELDS, placeOf).join('\n'));
}

/** The option that sets a field; null for a field that has none. */
export function flagOf(field: PropertyKey | undefined): string | null {
  switch (field) {
    case 'basePitch':
      return '--pitch';
    case 'baseWidth':
      return '--width';
    case 'ellipticalHz':
      return '--elliptical';
    case 'disc':
    case 'rpm':
      return `--${field}`;
    default:
      return null;
  }
}

/** Such as `house.json:12: machine.gain`. */
function placeInFile(file: ProfileFile | null, path: readonly PropertyKey[]): string {
  const name = fieldName(path);
  if (file === null) return name;
  const line = file.lineOf(path);
  return [line === null ? file.path : `${file.path}:${line}`, name].filter(Boolean).join(': ');
}
