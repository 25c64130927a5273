import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import glob from 'fast-glob';
import { bundleTest } from './bundle-tests.mjs';
import { mutantSwitch, TooManyHits } from './mutant-switch.mjs';
import { TEST_FILES } from './test-files.mjs';
import { declaredBy } from './vitest-stand-in.mjs';

/** In the sandbox, which is the folder that Stryker runs this in. */
const FOLDER = 'coverage/bundles';
const FIRST_RUN = `${FOLDER}/first-run.json`;

/**
 * Runs the tests for Stryker in its own process and keeps what is loaded: a mutant dies within
 * milliseconds, while vitest takes a second or more to start with 30 files. The quickest tests come
 * first. What a test file makes while it is loaded may hold a mutant too: such a file is loaded anew
 * for each mutant that it meets there.
 */
class InProcessRunner {
  /** Test files that were loaded without a mutant, by their path. */
  kept = new Map();
  written = new Set();
  loads = 0;

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    // Shrinking would take longer than all tests together, for a message that nobody reads.
    fc.configureGlobal({ seed: 1, endOnFailure: true, numRuns: 25 });
    await mkdir(FOLDER, { recursive: true });
  }

  /** All tests without a mutant: what each takes, and which mutants it reaches. */
  async dryRun() {
    const perTest = {};
    const space = { mutantCoverage: { static: {}, perTest } };
    // Where instrumented code counts, by the test that is named here.
    globalThis.__stryker__ = space;
    const known = [];
    const tests = [];
    for (const path of await glob(TEST_FILES)) {
      space.currentTestId = path;
      const declared = await this.load(path, 'cover');
      const metInLoading = perTest[path] ?? {};
      delete perTest[path];
      for (const [index, { name, run }] of declared.entries()) {
        const id = `${path}#${name}`;
        space.currentTestId = id;
        const before = performance.now();
        const failure = await failureOf(run);
        const timeSpentMs = performance.now() - before;
        const failureMessage = failure?.message ?? '';
        tests.push({ id, name: id, timeSpentMs, status: failure ? 1 : 0, failureMessage });
        perTest[id] = { ...metInLoading, ...perTest[id] };
        known.push({ id, path, index, timeSpentMs, metInLoading: Object.keys(metInLoading) });
      }
      space.currentTestId = undefined;
    }
    await writeFile(FIRST_RUN, JSON.stringify(known));
    return { status: 'complete', tests, mutantCoverage: space.mutantCoverage };
  }

  async mutantRun({ activeMutant: { id }, testFilter, hitLimit }) {
    Object.assign(mutantSwitch, { hits: 0, mostHits: 1000 + (hitLimit ?? 0) / 10 });
    const anew = new Map();
    let nrOfTests = 0;
    for (const { id: testId, path, index, isAnew } of await this.testsFor(id, testFilter)) {
      const failure = await failureOf(async () => {
        mutantSwitch.id = isAnew ? Number(id) : -1;
        const tests = await this.loaded(path, isAnew ? anew : this.kept);
        mutantSwitch.id = Number(id);
        // By its number: a title may have been made with the mutant.
        await tests[index]?.run();
      });
      mutantSwitch.id = -1;
      nrOfTests += 1;
      // A test may have caught it: what counts is that it was thrown.
      if (failure instanceof TooManyHits || mutantSwitch.hits > mutantSwitch.mostHits) {
        return { status: 'timeout', reason: `reached ${mutantSwitch.hits} times` };
      }
      if (failure === null) continue;
      return { status: 'killed', killedBy: [testId], failureMessage: failure.message, nrOfTests };
    }
    return { status: 'survived', nrOfTests };
  }

  /** Those that reach the mutant, in the order in which they are run. */
  async testsFor(mutant, wanted) {
    this.known ??= JSON.parse(await readFile(FIRST_RUN, 'utf8'));
    return this.known
      .filter(({ id }) => wanted === undefined || wanted.includes(id))
      .map((test) => ({ ...test, isAnew: test.metInLoading.includes(mutant) }))
      .sort((a, b) => a.isAnew - b.isAnew || a.timeSpentMs - b.timeSpentMs);
  }

  async loaded(path, files) {
    const known = files.get(path);
    if (known !== undefined) return known;
    const tests = await this.load(path, 'switch');
    files.set(path, tests);
    return tests;
  }

  /** The tests of a file, with all that they use, loaded anew. */
  async load(path, mode) {
    const place = resolve(FOLDER, `${mode}-${process.pid}-${path.replaceAll('/', '-')}.mjs`);
    if (!this.written.has(place)) await writeFile(place, await bundleTest(path, mode));
    this.written.add(place);
    this.loads += 1;
    return await declaredBy(() => import(`${pathToFileURL(place).href}?${this.loads}`));
  }
}

async function failureOf(run) {
  try {
    await run();
    return null;
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error));
  }
}

export const strykerPlugins = [
  { kind: 'TestRunner', name: 'in-process', injectableClass: InProcessRunner },
];
