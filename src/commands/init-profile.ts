import { lstat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { UsageError } from '../errors.js';
import { PROFILE_NAME } from '../profile/find-profile.js';
import { resolveProfile } from '../profile/resolve-profile.js';
import { checkOutputFile } from '../report/check-output.js';
import { profileTemplate } from '../report/profile-template.js';
import { REPLACE_FIRST } from '../report/replace-first.js';
import { safeText } from '../report/safe-text.js';
import { writeFileAtomic } from '../report/write-atomic.js';
import { DONE } from './exit-code.js';
import { type ProfileOptions, profileFlags } from './forecast-options.js';
import type { Run } from './run.js';
import type { StandardError } from './standard-error.js';

/**
 * Writes a first profile, and gives the exit code.
 * @param name of the file; null for the name that is found by itself, `-` for stdout
 */
export async function initProfile(
  name: string | null,
  options: ProfileOptions,
  { surroundings, output }: Run,
  errors: StandardError,
): Promise<number> {
  const flags = profileFlags(options);
  resolveProfile({ flags });
  const text = profileTemplate(flags);
  if (name === '-') {
    await output.write(text);
    return DONE;
  }
  const shown = name ?? PROFILE_NAME;
  const path = resolve(surroundings.cwd, shown);
  await refuseTaken(path, shown);
  await checkOutputFile(path, { option: '--init' });
  await writeFileAtomic(path, text);
  const [[first] = [[]]] = REPLACE_FIRST;
  const remedy = `start with ${first.join(', ')}; its head lists what comes next`;
  errors.notice(`wrote ${safeText(shown)}\n${remedy}`);
  return DONE;
}

/** A UsageError where something is already; a link that leads nowhere is something too. */
async function refuseTaken(path: string, shown: string): Promise<void> {
  const there = await lstat(path).catch(() => null);
  if (there === null) return;
  if (there.isDirectory()) {
    throw new UsageError(`--init: ${shown} is a folder; name a file, ${join(shown, PROFILE_NAME)}`);
  }
  throw new UsageError(
    `--init: ${shown} is there already and is not overwritten\n` +
      'give another name; `furrow profile --init -` shows the new one',
  );
}
