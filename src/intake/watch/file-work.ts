import { examineFile } from './examine-file.js';
import { contentJudge } from './judge-content.js';
import type { Look } from './look.js';
import type { WatchSetup } from './watch-setup.js';
import type { WatchedFiles } from './watched-files.js';

/** What a watch has done. */
export interface WatchCounts {
  readonly examined: number;
  readonly sameContent: number;
  readonly failed: number;
  /** Files whose report could not be written last time. */
  readonly unwritten: number;
}

/** The files that are examined just now. */
export interface FileWork {
  readonly size: () => number;
  /** Begins with as many that have waited long enough as there is room for; each end does, too. */
  readonly beginDue: () => void;
  /** Waits for those that are begun. */
  readonly settled: () => Promise<void>;
  readonly counts: () => WatchCounts;
  /** What went wrong with the watch itself, such as that nobody reads what it tells; else null. */
  readonly wrong: () => { readonly error: unknown } | null;
}

/**
 * @param stop nothing is begun any more after that
 * @param wake called when there is room again and nothing to fill it with, or something is wrong
 */
export function fileWork(
  setup: WatchSetup,
  files: WatchedFiles,
  stop: AbortSignal,
  wake: () => void,
): FileWork {
  const judge = contentJudge(setup, files.known);
  const begun = new Set<Promise<void>>();
  const unwritten = new Set<string>();
  const counts = { examined: 0, sameContent: 0, failed: 0 };
  let wrong: { readonly error: unknown } | null = null;

  const work = async (path: string, waited: Look) => {
    const done = await examineFile(path, waited, setup, { ...files, judge });
    if (done.kind === 'gone') return await files.putBack(path, 'gone');
    if (done.kind === 'changed') return await files.putBack(path, done.look);
    if (done.kind === 'unwritten') unwritten.add(path);
    else {
      unwritten.delete(path);
      if (done.event.type === 'examined') counts.examined += 1;
      else if (done.event.type === 'same-content') counts.sameContent += 1;
      else counts.failed += 1;
    }
    // Told before it is let go of, so that nothing newer of the file is told first.
    await setup.tell(done.event);
    await files.putBack(path, done.kind === 'done' ? done.file : 'dropped');
  };

  const begin = (path: string, waited: Look) => {
    const done = work(path, waited)
      .catch((error: unknown) => {
        wrong ??= { error };
      })
      .finally(() => {
        begun.delete(done);
        // At once: whoever looks at all files just now takes a while.
        beginDue();
        if (begun.size < setup.jobs) wake();
      });
    begun.add(done);
  };

  const beginDue = () => {
    while (begun.size < setup.jobs && !stop.aborted && wrong === null) {
      const due = files.takeDue();
      if (due === null) return;
      begin(...due);
    }
  };

  return {
    size: () => begun.size,
    beginDue,
    settled: async () => {
      while (begun.size > 0) await Promise.all(begun);
    },
    counts: () => ({ ...counts, unwritten: unwritten.size }),
    wrong: () => wrong,
  };
}
