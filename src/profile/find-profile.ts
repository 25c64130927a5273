import { stat } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';
import { type ProfileFile, readProfile } from './profile-file.js';

export const PROFILE_NAME = 'furrow.profile.json';

/**
 * The profile that holds for a working folder: the nearest `furrow.profile.json` upwards from it;
 * null without one. Its path is shown relative to the folder.
 */
export async function findProfile(cwd: string): Promise<ProfileFile | null> {
  for (let folder = cwd; ; folder = dirname(folder)) {
    const path = join(folder, PROFILE_NAME);
    if (await isFile(path)) return await readProfile(path, relative(cwd, path));
    if (dirname(folder) === folder) return null;
  }
}

async function isFile(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
}
