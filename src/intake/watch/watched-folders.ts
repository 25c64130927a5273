import { isSoundName } from '../../analysis/side-names.js';
import { treeLinks } from '../../analysis/tree-links.js';
import { folderHints } from './folder-hints.js';
import { isTemporaryName } from './temporary-name.js';
import { type Passed, walkFolder } from './walk-folder.js';
import type { WatchSetup } from './watch-setup.js';
import type { WatchedFiles } from './watched-files.js';

/** The folders that are watched, and what happens in them. */
export interface WatchedFolders {
  /** Looks at everything; how many files there are, and of how many the report is in force. */
  readonly lookAtAll: () => Promise<{ readonly files: number; readonly unchanged: number }>;
  /** Looks where something has happened, and at everything if it is time to. */
  readonly catchUp: () => Promise<void>;
  /** When everything is to be looked at next. */
  readonly next: () => number;
  readonly close: () => void;
}

/** @param wake called when something has happened */
export function watchedFolders(
  setup: WatchSetup,
  files: WatchedFiles,
  stop: AbortSignal,
  wake: () => void,
): WatchedFolders {
  const { folder: root, follow, settle, lookAgain, tell, now } = setup;
  /** Where something has happened, and whether a name came or went. */
  const touched = new Map<string, boolean>();
  const troubles = new Set<string>();
  let next = 0;
  const hints = folderHints(root, {
    hint: ({ path, isMove }) => {
      if (isTemporaryName(path.slice(path.lastIndexOf('/') + 1))) return;
      if (!isMove && !isSoundName(path)) return;
      touched.set(path, isMove || touched.get(path) === true);
      wake();
    },
    trouble: (message) => void trouble(message).catch(() => {}),
  });

  /** Each is told once. */
  const trouble = async (message: string) => {
    if (troubles.has(message)) return;
    troubles.add(message);
    await tell({ type: 'trouble', message });
  };

  const enter = (folder: string) => {
    // What came before the system began to tell of this folder is not told.
    if (hints.watch(folder)) next = Math.min(next, now() + settle);
  };

  const walk = async (folder: string, pass: (passed: Passed) => Promise<void>) => {
    for await (const passed of walkFolder(root, folder, await treeLinks(root, follow))) {
      if (stop.aborted) return;
      await pass(passed);
    }
  };

  const lookAtAll = async () => {
    next = now() + lookAgain;
    const folders = new Set<string>();
    const seen = new Set<string>();
    let isWhole = true;
    let unchanged = 0;
    await walk('', async (passed) => {
      if (passed.kind === 'closed') {
        isWhole = false;
        // What takes its place has to be watched anew.
        hints.forget(passed.path);
        await trouble(passed.error.message);
      } else if (passed.kind === 'folder') {
        folders.add(passed.path);
        if (!hints.has(passed.path)) enter(passed.path);
      } else {
        seen.add(passed.path);
        if (await files.sight(passed.path)) unchanged += 1;
      }
    });
    // Of a folder that cannot be read nothing is known to be gone.
    if (!stop.aborted && isWhole) await forget(folders, seen);
    return { files: seen.size, unchanged };
  };

  /** Takes as gone what was there and has not been passed. */
  const forget = async (folders: ReadonlySet<string>, seen: ReadonlySet<string>) => {
    for (const folder of hints.all()) if (!folders.has(folder)) hints.forget(folder);
    for (const { path, isThere } of files.known.all()) {
      if (isThere && !seen.has(path)) await files.sight(path);
    }
  };

  const catchUpAt = async (path: string, isMove: boolean) => {
    if (isMove) {
      const { kind } = await files.look(path);
      if (kind === 'folder') {
        await walk(path, async (passed) => {
          if (passed.kind === 'folder') enter(passed.path);
          else if (passed.kind === 'candidate') await files.sight(passed.path, true);
        });
        return;
      }
      // A folder that is gone takes all that was in it along.
      if (kind === 'gone' && hints.has(path)) next = now();
      if (kind === 'refused') return void (await files.sight(path, true));
    }
    if (isSoundName(path)) await files.sight(path, true);
  };

  return {
    lookAtAll,
    catchUp: async () => {
      // What is touched meanwhile has its turn later: else busy folders would hold up the others.
      const taken = [...touched];
      touched.clear();
      for (const [path, isMove] of taken) if (!stop.aborted) await catchUpAt(path, isMove);
      if (now() >= next && !stop.aborted) await lookAtAll();
    },
    next: () => next,
    close: hints.close,
  };
}
