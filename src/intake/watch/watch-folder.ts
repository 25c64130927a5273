import { alarm } from './alarm.js';
import { type FileWork, fileWork, type WatchCounts } from './file-work.js';
import { knownFiles } from './known-files.js';
import { readReports } from './read-reports.js';
import type { WatchSetup } from './watch-setup.js';
import { type WatchedFiles, watchedFiles } from './watched-files.js';
import { watchedFolders } from './watched-folders.js';

/**
 * Examines the files of a folder as they become whole, and writes a report of each, until it is
 * asked to stop; then it finishes what is in work. All that it has to remember is in the reports: a
 * file whose report says that it was as it is now, examined with what is in force now, is done.
 * @throws what `tell` throws, after what is in work
 */
export async function watchFolder(setup: WatchSetup, stop: AbortSignal): Promise<WatchCounts> {
  const { tell, now } = setup;
  const known = knownFiles((path) => setup.isNamedAlike(path, path));
  const closed = await readReports(setup.out, setup.examinedWith, known);
  await tell({ type: 'started', known: known.size });
  for (const message of closed) await tell({ type: 'trouble', message });

  const bell = alarm();
  stop.addEventListener('abort', bell.ring);
  const files = watchedFiles(setup, known);
  const work = fileWork(setup, files, stop, bell.ring);
  const folders = watchedFolders(setup, files, stop, bell.ring);
  try {
    const found = await folders.lookAtAll();
    if (!stop.aborted) await tell({ type: 'caught-up', ...found });
    while (!stop.aborted && work.wrong() === null) {
      await folders.catchUp();
      work.beginDue();
      await bell.wait(Math.min(dueNext(work, files, setup.jobs), folders.next()) - now());
    }
    const inWork = work.size();
    if (work.wrong() === null) {
      await tell({ type: 'stopping', inWork, waiting: files.waiting.size });
    }
  } finally {
    await work.settled();
    folders.close();
  }
  const wrong = work.wrong();
  if (wrong !== null) throw wrong.error;
  await tell({ type: 'stopped', ...work.counts() });
  return work.counts();
}

/** When there is something to begin with; where no more can be begun, whoever ends will say so. */
function dueNext(work: FileWork, { waiting }: WatchedFiles, jobs: number): number {
  return work.size() < jobs ? waiting.next() : Number.POSITIVE_INFINITY;
}
