import { mkdir, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { expect, onTestFinished } from 'vitest';
import type { WatchEvent } from '../../src/intake/watch/watch-event.js';
import { watchFolder } from '../../src/intake/watch/watch-folder.js';
import type { WatchSetup } from '../../src/intake/watch/watch-setup.js';
import { type WatchedDocument, watchedSchema } from '../../src/intake/watch/watched-schema.js';
import type { IntakeFileJson } from '../../src/report/intake-schema.js';
import { temporaryFolder } from './temporary-folder.js';

/** What a test may set of a watch. */
export type Wanted = Partial<Omit<WatchSetup, 'tell'>>;

/** A folder that is watched, by this process. */
export interface Watching {
  readonly folder: string;
  readonly out: string;
  readonly events: readonly WatchEvent[];
  /** Events of a type, as the paths they are about. */
  readonly pathsOf: (type: WatchEvent['type']) => string[];
  /** Waits for a condition; fails with what has happened if it does not come. */
  readonly until: (holds: () => boolean) => Promise<void>;
  /** Asks it to stop and waits for its end. */
  readonly stop: () => Promise<void>;
}

/** Paths that are examined in place of the sound in them: nothing here is about that. */
export function invented(path: string): IntakeFileJson {
  return {
    path,
    verdict: 'clear',
    worst: null,
    durationSeconds: 1,
    spareMm: 1,
    levelDb: 0,
    recommendedDb: 0,
    executes: 'machine',
    source: null,
    findings: [],
    ignored: 0,
    notJudged: [],
  };
}

/** Watches the folder `in`, a new one unless a place is given, with reports in `out` beside it. */
export async function watching(wanted: Wanted = {}, place?: string): Promise<Watching> {
  const base = place ?? (await temporaryFolder());
  const [folder, out] = [wanted.folder ?? join(base, 'in'), wanted.out ?? join(base, 'out')];
  for (const made of [folder, out]) await mkdir(made, { recursive: true });
  const events: WatchEvent[] = [];
  const end = new AbortController();
  const watch = watchFolder(
    {
      follow: false,
      settle: 60,
      lookAgain: 60_000,
      jobs: 2,
      version: '0.0.0',
      examinedWith: '0'.repeat(64),
      examine: async (path) => invented(path),
      isNamedAlike: () => true,
      now: () => performance.now(),
      ...wanted,
      folder,
      out,
      tell: async (event) => void events.push(event),
    },
    end.signal,
  );
  const stop = async () => {
    end.abort();
    await watch;
  };
  onTestFinished(stop);
  const until = async (holds: () => boolean) => {
    for (let tries = 0; !holds(); tries++) {
      if (tries === 1000) expect.fail(`nothing came of ${JSON.stringify(events)}`);
      await setTimeout(10);
    }
  };
  const pathsOf = (type: WatchEvent['type']) =>
    events.flatMap((event) => (event.type === type && 'path' in event ? [event.path] : []));
  await until(() => events.some(({ type }) => type === 'caught-up'));
  return { folder, out, events, pathsOf, until, stop };
}

/** All reports in a folder, by their places. */
export async function reportsIn(out: string): Promise<Map<string, WatchedDocument>> {
  const entries = await readdir(out, { recursive: true, withFileTypes: true });
  const reports = new Map<string, WatchedDocument>();
  for (const { parentPath, name } of entries.filter((entry) => entry.isFile())) {
    const path = join(parentPath, name);
    const report = watchedSchema.parse(JSON.parse(await readFile(path, 'utf8')));
    reports.set(path.slice(out.length + 1), report);
  }
  return reports;
}
