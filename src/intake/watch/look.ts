import type { BigIntStats } from 'node:fs';
import { lstat, stat } from 'node:fs/promises';
import type { TreeLinks } from '../../analysis/tree-links.js';
import { accessError } from '../../analysis/wav-access-error.js';
import type { InputError } from '../../errors.js';

/** What tells whether a file is still as it was. */
export interface Look {
  readonly bytes: number;
  /** Nanoseconds since 1970, in digits: more than a number holds. */
  readonly modifiedNs: string;
}

/** What is found at a path. */
export type Seen =
  | { readonly kind: 'file'; readonly look: Look }
  | { readonly kind: 'folder' }
  | { readonly kind: 'gone' }
  /** Something that is not to be read; it will not be looked into. */
  | { readonly kind: 'refused'; readonly look: Look; readonly error: InputError };

/**
 * Looks at a path without opening it.
 * @param shown the path as a user would name it
 */
export async function lookAt(path: string, shown: string, links: TreeLinks): Promise<Seen> {
  let facts: BigIntStats;
  try {
    facts = await lstat(path, { bigint: true });
    if (facts.isSymbolicLink()) {
      const fate = await links.judge(path, shown);
      if (fate.kind === 'refused') return { ...fate, look: lookOf(facts) };
      if (fate.kind === 'left-out') return { kind: 'gone' };
      facts = await stat(path, { bigint: true });
    }
  } catch (cause) {
    const error = accessError(shown, cause);
    return error.code === 'not-found'
      ? { kind: 'gone' }
      : { kind: 'refused', look: NOTHING, error };
  }
  return facts.isDirectory() ? { kind: 'folder' } : { kind: 'file', look: lookOf(facts) };
}

export function isSameLook(one: Look, other: Look): boolean {
  return one.bytes === other.bytes && one.modifiedNs === other.modifiedNs;
}

const NOTHING: Look = { bytes: 0, modifiedNs: '0' };

function lookOf({ size, mtimeNs }: BigIntStats): Look {
  return { bytes: Number(size), modifiedNs: String(mtimeNs) };
}
