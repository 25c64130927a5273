import { resolve } from 'node:path';
import { UsageError } from '../errors.js';
import { findProfile } from '../profile/find-profile.js';
import { type ProfileFile, readProfile } from '../profile/profile-file.js';
import { type ProfileSources, resolveProfile } from '../profile/resolve-profile.js';
import type { Settings } from '../settings.js';
import { type ProfileOptions, profileFlags } from './forecast-options.js';
import type { StandardError } from './standard-error.js';

/**
 * The settings of this run, and what they are made of: --profile, else the nearest profile upwards,
 * else the defaults.
 */
export async function chooseProfile(
  options: ProfileOptions,
  cwd: string,
  errors: StandardError,
): Promise<{ readonly settings: Settings; readonly sources: ProfileSources }> {
  const sources = await profileSources(options, cwd);
  const settings = resolveProfile(sources);
  errors.notice(profileNotice(sources));
  return { settings, sources };
}

/** What the settings of this run are made of, not yet checked. */
export async function profileSources(
  options: ProfileOptions,
  cwd: string,
): Promise<ProfileSources> {
  return { file: await profileFile(options, cwd), flags: profileFlags(options) };
}

/** Options that name a file to be read. */
interface ReadOptions {
  readonly filesFrom?: string | undefined;
  readonly rules?: string | undefined;
}

/** The files that a run reads besides its inputs, as given: its outputs may not take their place. */
export function readBesides(
  { file = null }: ProfileSources,
  { filesFrom, rules }: ReadOptions,
): string[] {
  const list = filesFrom === '-' ? undefined : filesFrom;
  return [file?.path, list, rules].filter((path) => path !== undefined);
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
