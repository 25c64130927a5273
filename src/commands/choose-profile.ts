import { resolve } from 'node:path';
import { UsageError } from '../errors.js';
import { findProfile } from '../profile/find-profile.js';
import { type ProfileFile, readProfile } from '../profile/profile-file.js';
import { type ProfileSources, resolveProfile } from '../profile/resolve-profile.js';
import type { Settings } from '../settings.js';
import { type ProfileOptions, profileFlags } from './forecast-options.js';
import type { StandardError } from './standard-error.js';

/** The settings of this run: --profile, else the nearest profile upwards, else the defaults. */
export async function chooseProfile(
  options: ProfileOptions,
  cwd: string,
  errors: StandardError,
): Promise<Settings> {
  const sources = await profileSources(options, cwd);
  const settings = resolveProfile(sources);
  errors.notice(profileNotice(sources));
  return settings;
}

/** What the settings of this run are made of, not yet checked. */
export async function profileSources(
  options: ProfileOptions,
  cwd: string,
): Promise<ProfileSources> {
  return { file: await profileFile(options, cwd), flags: profileFlags(options) };
}

/** Says which profile file was used. */
export function profileNotice({ file = null }: ProfileSources): string {
  return file === null ? 'no profile file: built-in defaults' : `profile ${file.path}`;
}

async function profileFile(
  { profile, discovery }: ProfileOptions,
  cwd: string,
): Promise<ProfileFile | null> {
  if (profile === '') throw new UsageError('--profile: found nothing, expected a file');
  if (profile !== undefined) return await readProfile(resolve(cwd, profile), profile);
  return discovery ? await findProfile(cwd) : null;
}
