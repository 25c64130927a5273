import type { Dir, Dirent } from 'node:fs';
import { opendir } from 'node:fs/promises';
import { join } from 'node:path';
import { isSoundName } from '../../analysis/side-names.js';
import type { TreeLinks } from '../../analysis/tree-links.js';
import { accessError } from '../../analysis/wav-access-error.js';
import type { InputError } from '../../errors.js';
import { lookAt } from './look.js';
import { isTemporaryName } from './temporary-name.js';

/** What a walk comes by. Paths are in the root, with /; the root itself is empty. */
export type Passed =
  | { readonly kind: 'folder'; readonly path: string }
  /** A name of sound, or a link that is refused. */
  | { readonly kind: 'candidate'; readonly path: string }
  /** A folder that cannot be read. */
  | { readonly kind: 'closed'; readonly path: string; readonly error: InputError };

/**
 * Walks a folder and those below it. Names that are temporary are passed by; names are read some at
 * a time, so that memory does not grow with their number.
 * @param folder where to begin, in the root
 */
export async function* walkFolder(
  root: string,
  folder: string,
  links: TreeLinks,
): AsyncGenerator<Passed, void, undefined> {
  let entries: Dir;
  try {
    entries = await opendir(join(root, folder));
  } catch (cause) {
    const error = accessError(folder === '' ? '.' : folder, cause);
    yield { kind: 'closed', path: folder, error };
    return;
  }
  try {
    yield { kind: 'folder', path: folder };
    for await (const entry of entries) {
      if (isTemporaryName(entry.name)) continue;
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      const kind = await kindOf(entry, join(root, path), path, links);
      if (kind === 'folder') yield* walkFolder(root, path, links);
      else if (kind === 'refused' || isSoundName(entry.name)) yield { kind: 'candidate', path };
    }
  } finally {
    // Whoever stops in between leaves it open; at the end it is closed already.
    await entries.close().catch(() => {});
  }
}

async function kindOf(entry: Dirent, path: string, shown: string, links: TreeLinks) {
  if (entry.isSymbolicLink()) return (await lookAt(path, shown, links)).kind;
  return entry.isDirectory() ? 'folder' : 'file';
}
