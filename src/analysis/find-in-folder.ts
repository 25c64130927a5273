import type { Dirent } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { FoundInput } from './found-input.js';
import { byNaturalOrder } from './natural-order.js';
import { isSideName, oneEachSide } from './side-names.js';
import { type TreeLinks, treeLinks } from './tree-links.js';
import { accessError } from './wav-access-error.js';

/**
 * The files of sound and saved motions of a folder and its subfolders, whatever the case of `.wav`,
 * `.aif`, `.aiff`, `.aifc`, `.flac` and `.motion`, in natural order; of a side that lies there as
 * sound and as motion, only the sound. Hidden ones are left out: desktops keep sidecars of the same
 * name there. Links are taken as far as `treeLinks` allows. Pipes and the like of that name are
 * taken: that they cannot be read should not go unsaid.
 * @param folder as it is to stand in the results, relative to `cwd`
 * @param follow whether links out of the folder are followed
 * @returns files, and a failure for each subfolder that cannot be read and each link that is
 *   refused; empty if there is nothing
 */
export async function findInFolder(
  folder: string,
  cwd: string,
  follow = false,
): Promise<FoundInput[]> {
  return await findBelow(folder, cwd, await treeLinks(resolve(cwd, folder), follow));
}

async function findBelow(folder: string, cwd: string, links: TreeLinks): Promise<FoundInput[]> {
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
    const fate = entry.isSymbolicLink()
      ? await links.judge(resolve(cwd, path), path)
      : { kind: entry.isDirectory() ? 'folder' : 'file' };
    if ('error' in fate) found.push({ kind: 'failure', error: fate.error });
    else if (fate.kind === 'folder') {
      for (const input of await findBelow(path, cwd, links)) found.push(input);
    } else if (fate.kind === 'file' && sides.has(entry.name)) found.push({ kind: 'file', path });
  }
  return found;
}
