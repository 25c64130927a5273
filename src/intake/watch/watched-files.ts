import { realpath } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { treeLinks } from '../../analysis/tree-links.js';
import { type DueList, dueList } from './due-list.js';
import type { KnownFile, KnownFiles } from './known-files.js';
import { isSameLook, type Look, lookAt, type Seen } from './look.js';
import type { WatchSetup } from './watch-setup.js';

/** The files of a watched folder: which have a report, which wait for one, which are in work. */
export interface WatchedFiles {
  readonly known: KnownFiles;
  readonly waiting: DueList<Look>;
  /** Looks at a path by itself. */
  readonly look: (path: string) => Promise<Seen>;
  /**
   * Looks whether a file is new, changed or gone, tells so, and has it wait if it needs a report.
   * @param isTouched whether something happened to it: then what failed is tried again
   * @returns whether it is there and its report is in force
   */
  readonly sight: (path: string, isTouched?: boolean) => Promise<boolean>;
  /** Takes out the one that has waited long enough, into work; null if there is none. */
  readonly takeDue: () => readonly [path: string, look: Look] | null;
  /** Takes a file out of work, with what is known of it now, or to wait anew, or as gone. */
  readonly putBack: (path: string, as: KnownFile | Look | 'gone' | 'dropped') => Promise<void>;
}

export function watchedFiles(setup: WatchSetup, known: KnownFiles): WatchedFiles {
  const { folder, settle, follow, tell, now } = setup;
  const waiting = dueList<Look>(settle);
  /** Whether something happened to a file while it was in work. */
  const inWork = new Map<string, boolean>();
  const links = treeLinks(folder, follow);
  const look = async (path: string): Promise<Seen> => {
    if (!follow && !(await isWhereItSays(folder, path))) return { kind: 'gone' };
    return await lookAt(join(folder, path), path, await links);
  };

  const lose = async (path: string) => {
    const file = known.get(path);
    if (file?.isThere === true) await tell({ type: 'deleted', path });
    if (file !== undefined) known.set({ ...file, isThere: false });
  };

  const sight = async (path: string, isTouched = false) => {
    if (isTouched && inWork.has(path)) inWork.set(path, true);
    // A file that waits is looked at when its time has come, not at each write.
    const isUnderWay = () => inWork.has(path) || waiting.has(path);
    if (isUnderWay()) return false;
    const seen = await look(path);
    // Someone else may have been told of it meanwhile.
    if (isUnderWay()) return false;
    if (seen.kind === 'gone' || seen.kind === 'folder') {
      await lose(path);
      return false;
    }
    const file = known.get(path);
    // Of a file that was told to be gone it is told that it is back.
    const isNew = file === undefined || file.isThere === false;
    if (file !== undefined) known.set({ ...file, isThere: true });
    if (!isNew && holds(file, seen.look, isTouched)) return true;
    waiting.put(path, seen.look, now());
    await tell({ type: isNew ? 'arrived' : 'changed', path });
    return false;
  };

  return {
    known,
    waiting,
    look,
    sight,
    takeDue: () => {
      const due = waiting.take(now());
      if (due !== null) inWork.set(due[0], false);
      return due;
    },
    putBack: async (path, as) => {
      const isTouched = inWork.get(path) === true;
      inWork.delete(path);
      if (as === 'gone') {
        const file = known.get(path);
        if (file !== undefined) known.set({ ...file, isThere: false });
        await tell({ type: 'deleted', path });
      } else if (as === 'dropped') return;
      else if ('place' in as) known.set(as);
      else waiting.put(path, as, now());
      if (isTouched) await sight(path, true);
    },
  };
}

/**
 * Whether the folders of a path are folders, not links: one that was walked as a folder may have
 * been replaced by a link out of the tree since.
 */
async function isWhereItSays(root: string, path: string): Promise<boolean> {
  const within = dirname(path);
  if (within === '.') return true;
  try {
    return (await realpath(join(root, within))) === join(await realpath(root), within);
  } catch {
    // Gone or closed: whoever looks at the file itself will say so.
    return true;
  }
}

/** Whether what is reported of a file is still to be said of it. */
function holds(file: KnownFile, look: Look, isTouched: boolean): boolean {
  if (!file.isCurrent || !isSameLook(file.look, look)) return false;
  // Of an earlier run, or touched: what stood in the way may be gone.
  return file.outcome !== 'passing-failure' || (file.isOfThisRun && !isTouched);
}
