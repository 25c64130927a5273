import { readFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import esbuild from 'esbuild';

const STAND_IN = new URL('./vitest-stand-in.mjs', import.meta.url).href;
const SWITCH = new URL('./mutant-switch.mjs', import.meta.url).href;
/** How often a property is tried, of what it says itself. */
const SHARE = Number(process.env['FURROW_RUNS'] ?? 0.25);

/**
 * A test file and all of furrow that it uses as one module.
 * @param mode `cover` counts which mutants are reached; `switch` only switches them, since counting
 *   takes several times as long as what is counted
 */
export async function bundleTest(path, mode) {
  const { outputFiles } = await esbuild.build({
    stdin: {
      contents: `import './tests/support/to-be-within.ts'; import './${path}';`,
      resolveDir: process.cwd(),
    },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    logLevel: 'error',
    plugins: [keptOutside, asMutated],
  });
  const [{ text }] = outputFiles;
  return mode === 'cover' ? text : switchedOnly(text);
}

/** vitest is replaced; every other package is loaded once, not with each module. */
const keptOutside = {
  name: 'kept-outside',
  setup: (build) => {
    build.onResolve({ filter: /^[^./]/ }, ({ path }) => ({
      path: path === 'vitest' ? STAND_IN : path,
      external: true,
    }));
  },
};

/**
 * A module's `import.meta.url` stays that of its source, and a property is tried a quarter as often:
 * what survives goes through all tests, and a mutant that only more runs would kill is told as one
 * that survived.
 */
const asMutated = {
  name: 'as-mutated',
  setup: (build) => {
    build.onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      const source = await readFile(path, 'utf8');
      const contents = source
        .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href))
        .replace(/numRuns: (\d+)/g, (_, runs) => `numRuns: ${Math.ceil(Number(runs) * SHARE)}`);
      return { contents, loader: 'ts' };
    });
  },
};

function switchedOnly(text) {
  const switched = text
    .replace(/stryCov_\w+\("[^()]*"\)/g, '0')
    .replace(/stryMutAct_\w+\("(\d+)"\)/g, '(mutantSwitch.id === $1 && mutantSwitch.isHit())');
  return `import { mutantSwitch } from '${SWITCH}';\n${switched}`;
}
