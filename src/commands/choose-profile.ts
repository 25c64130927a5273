import { resolve } from 'node:path';
import { findProfile } from '../profile/find-profile.js';
import { type ProfileFile, readProfile } from '../profile/profile-file.js';
import { resolveProfile } from '../profile/resolve-profile.js';
import type { Settings } from '../settings.js';
import { type ForecastOptions, profileFlags } from './forecast-options.js';
import type { StandardError } from './standard-error.js';

/** The settings of this run: --profile, else the nearest profile upwards, else the defaults. */
export async function chooseProfile(
  options: ForecastOptions,
  cwd: string,
  errors: StandardError,
): Promise<Settings> {
  const file = await profileFile(options, cwd);
  const settings = resolveProfile({ file, flags: profileFlags(options) });
  errors.notice(file === null ? 'no profile file: built-in defaults' : `profile ${file.path}`);
  return settings;
}

async function profileFile(
  { profile, discovery }: ForecastOptions,
  cwd: string,
): Promise<ProfileFile | null> {
  if (profile !== undefined) return await readProfile(resolve(cwd, profile), profile);
  return discovery ? await findProfile(cwd) : null;
}
