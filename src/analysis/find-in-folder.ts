import type { Dirent } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { FoundInput } from './found-input.js';
import { byNaturalOrder } from './natural-order.js';
import { isSideName, oneEachSide } from './side-names.js';
import { accessError } from './wav-access-error.js';

/**
 * The files of sound and saved motions of a folder and its subfolders, whatever the case of `.wav`,
 * `.aif`, `.aiff`, `.aifc`, `.flac` and `.motion`, in natural order; of a side that lies there as
 * sound and as motion, only the sound. Hidden ones are left out: desktops keep sidecars of the same
 * name there. Links to files are taken, links to folders are not followed. Pipes and the like of
 * that name are taken: that they cannot be read should not go unsaid.
 * @param folder as it is to stand in the results, relative to `cwd`
 * @returns files, and a failure for each subfolder that cannot be read; empty if there is nothing
 */
export async function findInFolder(folder: string, cwd: string): Promise<FoundInput[]> {
  let entries: Dirent[];
  try {
    entries = await readdir(resolve(cwd, folder), { withFileTypes: true });
  } catch (cause) {
    return [{ kind: 'failure', error: accessError(folder, cause) }];
  }
  const found: FoundInput[] = [];
  const files = entries.filter((entry) => !entry.isDirectory()).map(({ name }) => name);
  const sides = new Set(oneEachSide(files.filter(isSideName)));
  for (const entry of entries.sort((a, b) => byNaturalOrder(a.name, b.name))) {
    if (entry.name.startsWith('.')) continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      for (const input of await findInFolder(path, cwd)) found.push(input);
    } else if (sides.has(entry.name) && !(await isLinkToFolder(entry, resolve(cwd, path)))) {
      found.push({ kind: 'file', path });
    }
  }
  return found;
}

/** True for a symbolic link that leads to a folder; false for one that leads nowhere. */
export async function isLinkToFolder(
  entry: Pick<Dirent, 'isSymbolicLink'>,
  path: string,
): Promise<boolean> {
  if (!entry.isSymbolicLink()) return false;
  try {
    return (await stat(path)).isDirectory();
  } catch {
    return false;
  }
}
