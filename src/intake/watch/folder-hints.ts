import { join } from 'node:path';
import { type FSWatcher, watch } from 'chokidar';

/** Says in which folders something happens; what it is, whoever is told has to look. */
export interface FolderHints {
  /** Watches the files of a folder, not those of its subfolders; anew if it did already. */
  readonly watch: (folder: string) => void;
  readonly has: (folder: string) => boolean;
  /** The folders that are watched. */
  readonly all: () => readonly string[];
  readonly forget: (folder: string) => Promise<void>;
  readonly close: () => Promise<void>;
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
  const forget = async (folder: string) => {
    const watcher = watchers.get(folder);
    watchers.delete(folder);
    await watcher?.close();
  };
  return {
    has: (folder) => watchers.has(folder),
    all: () => [...watchers.keys()],
    watch: (folder) => {
      void forget(folder).catch(() => {});
      const watcher = watch(join(root, folder), {
        depth: 0,
        ignoreInitial: true,
        ignorePermissionErrors: true,
        ignored: (_, facts) => facts !== undefined && !facts.isDirectory(),
      });
      watchers.set(folder, watcher);
      // What the library makes of the events is about files that it watches one by one.
      watcher.on('raw', (event: string, name: unknown) => {
        if (typeof name !== 'string') return;
        const path = folder === '' ? name : `${folder}/${name}`;
        tell.hint({ path, isMove: event === 'rename' });
      });
      watcher.on('error', (error) => {
        tell.trouble(error instanceof Error ? error.message : String(error));
      });
    },
    forget,
    close: async () => {
      for (const folder of watchers.keys()) await forget(folder);
    },
  };
}
