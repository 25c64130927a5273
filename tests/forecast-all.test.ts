import { copyFile, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Worker } from 'node:worker_threads';
import { describe, expect, test, vi } from 'vitest';
import { rowsOfSide } from '../src/analysis/motion-rows.js';
import { forecastAll, type SideRun } from '../src/forecast-all.js';
import type { ForecastedFile } from '../src/forecast-result.js';
import type { Request } from '../src/forecast-side.js';
import { resolveProfile } from '../src/profile/resolve-profile.js';
import type { Failure } from '../src/report/failure.js';
import { sideJobs } from '../src/side-jobs.js';
import { partsOfSide } from '../src/side-parts.js';
import { type SidePool, threadPool } from '../src/side-pool.js';
import { forecastedFile } from './support/forecast-fixture.js';
import { withFolder } from './support/run-furrow.js';
import { temporaryFolder } from './support/temporary-folder.js';
import { wavBytes } from './support/wav-writer.js';

const SIGNAL = fileURLToPath(
  new URL('reference-signals/closed-forms/inter-sample.wav', import.meta.url),
);

const WORKER = new URL('support/failing-worker.mjs', import.meta.url);
const REQUEST: Request = { levelDb: 0, planner: 'turn-ahead' };

function runWith(pool: SidePool): SideRun {
  return {
    pool,
    settings: resolveProfile(),
    requestFor: () => REQUEST,
    progress: new BigInt64Array(new SharedArrayBuffer(8)),
  };
}

async function all(
  inputs: readonly (string | Failure)[],
  run: SideRun,
): Promise<(ForecastedFile | Failure)[]> {
  const results = [];
  for await (const result of forecastAll(inputs, run)) results.push(result);
  return results;
}

/** A pool that does whole files by itself, each when `work` is done with it. */
function poolOf(jobs: number, work: (path: string) => Promise<void>): SidePool {
  const unasked = async () => {
    throw new Error('nobody should ask for this');
  };
  return {
    jobs,
    run: {
      part: unasked,
      parts: unasked,
      tightest: unasked,
      file: async ({ input }) => {
        const path = typeof input === 'string' ? input : input.name;
        await work(path);
        return { value: forecastedFile({ name: path }) };
      },
    },
    keep: () => {},
    close: async () => {},
  };
}

/** Such a pool that does sides in parts too: whatever the part, a short signal is measured. */
function poolInParts(): SidePool {
  const { run, ...pool } = poolOf(2, async () => {});
  const file = forecastedFile({ name: 'in parts' });
  return {
    ...pool,
    run: {
      ...run,
      part: async ({ settings, progress }) => {
        const parts = await partsOfSide(SIGNAL, settings);
        const rows = rowsOfSide(parts, settings);
        const [part] = parts;
        if (part === undefined) throw new Error('the signal has no part');
        return await sideJobs.part({ input: SIGNAL, settings, progress, part, rows });
      },
      parts: async () => ({ value: file }),
      tightest: async () => ({ value: file.forecast.tightest }),
    },
  };
}

/** So many copies of a short signal, in a folder of their own. */
async function withSignals<T>(
  names: readonly string[],
  use: (paths: readonly string[]) => Promise<T>,
): Promise<T> {
  return await withFolder(async (folder) => {
    const paths = names.map((name) => `${folder}/${name}.wav`);
    for (const path of paths) await copyFile(SIGNAL, path);
    return await use(paths);
  });
}

/** As long as is said, and nearly all of it a hole. */
async function silentSide(name: string, minutes: number): Promise<string> {
  const path = join(await temporaryFolder(), name);
  const bytes = wavBytes({ channels: 1, bitDepth: 8, sampleRate: 44_100, words: [0] });
  // Its data go on to the end of the file.
  bytes.fill(0xff, 40, 44);
  await writeFile(path, bytes);
  await truncate(path, bytes.length + minutes * 60 * 44_100);
  return path;
}

describe('results', () => {
  test('come in the order of the inputs, whichever is done first', async () => {
    await withSignals(['a', 'b', 'c', 'd'], async (paths) => {
      const done: string[] = [];
      const pool = poolOf(2, async (path) => {
        const wait = path.endsWith('a.wav') ? 60 : 1;
        await new Promise((resolve) => setTimeout(resolve, wait));
        done.push(path);
      });
      const results = await all(paths, runWith(pool));
      expect(results.map((result) => ('name' in result ? result.name : ''))).toEqual(paths);
      expect(done[0]).not.toBe(paths[0]);
    });
  });

  test('keep the place of what had failed before', async () => {
    await withSignals(['a', 'b'], async ([first = '', second = '']) => {
      const failure: Failure = { path: 'x', code: 'empty-folder', message: 'x: empty' };
      const pool = poolOf(1, async () => {});
      const results = await all([first, failure, second], runWith(pool));
      expect(results[1]).toBe(failure);
    });
  });

  test('wait for the reader: no more than twice the threads are begun ahead of it', async () => {
    const names = Array.from({ length: 12 }, (_, number) => `side-${number}`);
    await withSignals(names, async (paths) => {
      let begun = 0;
      const pool = poolOf(2, async () => {
        begun += 1;
      });
      let told = 0;
      for await (const _ of forecastAll(paths, runWith(pool))) {
        told += 1;
        await new Promise((resolve) => setTimeout(resolve, 2));
        expect(begun).toBeLessThanOrEqual(told + 4);
      }
      expect(told).toBe(12);
    });
  });
});

describe('threads with nothing to do', () => {
  test.each([
    ['it is', [3, 40], [1, 2]],
    ['another one is', [40, 3], [2, 2]],
  ])('are kept, but one only where the last side is long: %s', async (_, lengths, wanted) => {
    const kept: number[] = [];
    const keep = (threads: number) => kept.push(threads);
    const paths = await Promise.all(lengths.map((minutes) => silentSide('side.wav', minutes)));
    await all(paths, runWith({ ...poolInParts(), keep }));
    // Which file is open first is the system's.
    expect(kept.toSorted((a, b) => a - b)).toEqual(wanted);
  });

  test('end, but for as many as are kept', async () => {
    await withSignals(['a', 'b', 'c'], async ([a = '', b = '', c = '']) => {
      const threads: Worker[] = [];
      const note = (thread: Worker) => threads.push(thread);
      process.on('worker', note);
      const pool = await threadPool(3, WORKER);
      try {
        const { settings, progress } = runWith(pool);
        const job = (input: string) =>
          pool.run.file({ input, settings, progress, request: REQUEST });
        const ended = () => threads.filter(({ threadId }) => threadId === -1).length;
        await Promise.all([a, b, c].map(job));
        expect(threads).toHaveLength(3);
        expect(ended()).toBe(0);
        pool.keep(1);
        await Promise.all([a, b, c].map(job));
        await vi.waitFor(() => expect(ended()).toBe(2));
        expect(await job(a)).toEqual({ value: { name: a } });
        expect(threads).toHaveLength(3);
      } finally {
        process.off('worker', note);
        await pool.close();
      }
    });
  });
});

describe('the tightest plan', () => {
  const failure: Failure = { path: 'x', code: 'empty-folder', message: 'x: empty' };
  test.each([
    ['has a thread of its own for the last side', [], 1],
    ['has none where another side follows', [SIGNAL], 0],
    ['has one where what follows had failed before', [failure, failure], 1],
    ['has one where what follows fails meanwhile', ['none.wav', 'none-either.wav'], 1],
  ])('%s', async (_, behind, wanted) => {
    let apart = 0;
    const { run, ...pool } = poolInParts();
    const tightest: typeof run.tightest = async (job) => {
      apart += 1;
      return await run.tightest(job);
    };
    const results = await all(
      [await silentSide('long.wav', 3), ...behind],
      runWith({ ...pool, run: { ...run, tightest } }),
    );
    expect(results).toHaveLength(1 + behind.length);
    expect(results[0]).toMatchObject({ name: 'in parts' });
    expect(apart).toBe(wanted);
  });
});

describe('a thread that dies', () => {
  test.each([
    ['throws', 'thrown on purpose'],
    ['dies-late', 'died on purpose'],
    ['eats-memory', 'memory'],
  ])('by a file that %s takes that file only', async (name, reason) => {
    await withSignals(['before', name, 'after', 'last'], async (paths) => {
      const pool = await threadPool(2, WORKER, { heapMebibytes: 32 });
      try {
        const results = await all(paths, runWith(pool));
        expect(results).toHaveLength(4);
        expect(results[1]).toMatchObject({ path: paths[1], code: 'crashed' });
        expect(results[1]).toHaveProperty('message', expect.stringContaining(reason));
        for (const at of [0, 2, 3]) expect(results[at]).toEqual({ name: paths[at] });
      } finally {
        await pool.close();
      }
    });
  });

  test('is given the file a second time', async () => {
    await withSignals(['dies-once'], async (paths) => {
      const pool = await threadPool(1, WORKER);
      try {
        // One job at a time would be done without a thread.
        const results = await all(paths, runWith({ ...pool, jobs: 2 }));
        expect(results).toEqual([{ name: paths[0] }]);
      } finally {
        await pool.close();
      }
    });
  });
});
