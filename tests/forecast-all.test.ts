import { copyFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { forecastAll, type SideRun } from '../src/forecast-all.js';
import type { ForecastedFile } from '../src/forecast-result.js';
import { resolveProfile } from '../src/profile/resolve-profile.js';
import type { Failure } from '../src/report/failure.js';
import { type SidePool, threadPool } from '../src/side-pool.js';
import { forecastedFile } from './support/forecast-fixture.js';
import { withFolder } from './support/run-furrow.js';

const SIGNAL = fileURLToPath(
  new URL('reference-signals/closed-forms/inter-sample.wav', import.meta.url),
);

function runWith(pool: SidePool): SideRun {
  return {
    pool,
    settings: resolveProfile(),
    requestFor: () => ({ levelDb: 0, planner: 'turn-ahead' }),
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
    close: async () => {},
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

describe('a thread that dies', () => {
  const worker = new URL('support/failing-worker.mjs', import.meta.url);

  test.each([
    ['throws', 'thrown on purpose'],
    ['dies-late', 'died on purpose'],
    ['eats-memory', 'memory'],
  ])('by a file that %s takes that file only', async (name, reason) => {
    await withSignals(['before', name, 'after', 'last'], async (paths) => {
      const pool = await threadPool(2, worker, { heapMebibytes: 32 });
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
      const pool = await threadPool(1, worker);
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
