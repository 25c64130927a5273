import { realpath, stat } from 'node:fs/promises';
import { dirname, relative, resolve, sep } from 'node:path';
import { InputError } from '../errors.js';
import { accessError } from './wav-access-error.js';

/** What becomes of a link that was met below a folder. */
export type LinkFate =
  /** It stands for a file, or for nothing, which the reader will say. */
  | { readonly kind: 'file' }
  /** It stands for a folder that is to be entered. */
  | { readonly kind: 'folder' }
  /** It stands for a folder that is entered by another way. */
  | { readonly kind: 'left-out' }
  | { readonly kind: 'refused'; readonly error: InputError };

/** Judges the links of one tree. */
export interface TreeLinks {
  /** @param shown the link as the user would name it */
  readonly judge: (path: string, shown: string) => Promise<LinkFate>;
}

/**
 * The links of the tree under a folder. Who gives a folder means what is in it: a link out of it
 * could lead to files that nobody meant to hand over, so it is refused unless links are followed.
 * A folder is entered by a link only if it lies outside, and once; a link to a folder that holds the
 * link itself is a loop, and refused.
 * @param follow whether links out of the tree are followed
 */
export async function treeLinks(folder: string, follow: boolean): Promise<TreeLinks> {
  const root = await realpath(folder).catch(() => resolve(folder));
  const entered = new Set<string>();
  return {
    judge: async (path, shown) => {
      let isFolder: boolean;
      let target: string;
      try {
        isFolder = (await stat(path)).isDirectory();
        target = await realpath(path);
      } catch {
        return { kind: 'file' };
      }
      const isInside = isWithin(root, target);
      if (!isInside && !follow) return { kind: 'refused', error: outside(shown) };
      if (!isFolder) return { kind: 'file' };
      if (isInside || entered.has(target)) return { kind: 'left-out' };
      const place = await realpath(dirname(path));
      if (isWithin(target, place)) return { kind: 'refused', error: accessError(shown, LOOP) };
      entered.add(target);
      return { kind: 'folder' };
    },
  };
}

/** As the system says it of links that lead to themselves. */
const LOOP = Object.assign(new Error('leads to a folder that holds it'), { code: 'ELOOP' });

/** Whether a path is a folder or lies below it; both absolute and free of links. */
export function isWithin(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !way.startsWith(sep));
}

function outside(shown: string): InputError {
  const message = `${shown}: found a link that leads out of the folder, expected what lies in it`;
  const remedy = 'name what it leads to, or give --follow';
  return new InputError(shown, 'link-outside', `${message}; ${remedy}`);
}
