import { type FSWatcher, watch } from 'node:fs';
import { join } from 'node:path';

/** Says in which folders something happens; what it is, whoever is told has to look. */
export interface FolderHints {
  /**
   * Watches the names in a folder, not those in its subfolders; anew if it did already.
   * @returns whether the system will tell of it
   */
  readonly watch: (folder: string) => boolean;
  readonly has: (folder: string) => boolean;
  /** The folders that are watched. */
  readonly all: () => readonly string[];
  readonly forget: (folder: string) => void;
  readonly close: () => void;
}

/** What a hint says. */
export interface Hint {
  /** In the root, with /. */
  readonly path: string;
  /** Whether something came, went or changed its name, not just its content. */
  readonly isMove: boolean;
}

/**
 * Only folders are watched: the system tells of the files in them through the folder, so that ten
 * thousand files take no handle of their own. A file system that tells nothing, and a folder for
 * which the system has no watch left, are seen at the next look at everything.
 */
export function folderHints(
  root: string,
  tell: { readonly hint: (hint: Hint) => void; readonly trouble: (message: string) => void },
): FolderHints {
  const watchers = new Map<string, FSWatcher>();
  const forget = (folder: string) => {
    watchers.get(folder)?.close();
    watchers.delete(folder);
  };
  const lose = (folder: string, error: unknown) => {
    forget(folder);
    tell.trouble(error instanceof Error ? error.message : String(error));
    return false;
  };
  return {
    has: (folder) => watchers.has(folder),
    all: () => [...watchers.keys()],
    watch: (folder) => {
      forget(folder);
      try {
        const watcher = watch(join(root, folder), (event, name) => {
          // Where the system does not say which name, the folder itself is to be looked at.
          const path = [folder, name ?? ''].filter((part) => part !== '').join('/');
          tell.hint({ path, isMove: event === 'rename' || name === null });
        });
        watcher.on('error', (error) => lose(folder, error));
        watchers.set(folder, watcher);
        return true;
      } catch (error) {
        return lose(folder, error);
      }
    },
    forget,
    close: () => {
      for (const folder of watchers.keys()) forget(folder);
    },
  };
}
