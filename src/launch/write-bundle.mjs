// @ts-check
import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { commandChunks } from './command-chunks.mjs';

// Bundles what a compiled tree runs, into that tree: node src/launch/write-bundle.mjs dist

const folder = resolve(process.argv[2] ?? 'dist');

/** What threads run: named as it is imported by, with what it exports. */
const WORKERS = { 'side-worker': ['part', 'parts', 'tightest', 'file'], 'fit-worker': ['measure'] };

await write('cli', commandChunks(folder));
for (const [name, jobs] of Object.entries(WORKERS)) {
  await write(name);
  await writeFile(join(folder, `${name}.js`), workerText(name, jobs));
}
await writePlain(join(folder, 'launch/launch.js'), 'launch.cjs', 'cjs');
// The pool has its threads begin with this file, beside the one that it is in itself.
const pool = dirname(fileURLToPath(import.meta.resolve('tinypool')));
await writePlain(join(pool, 'entry/worker.js'), 'entry/worker.js', 'esm');

/**
 * Writes an entry and what it loads late as scripts that `loadBundle` runs.
 * @param {string} name
 * @param {import('rolldown').OutputOptions['codeSplitting']} codeSplitting
 */
async function write(name, codeSplitting = {}) {
  const bundle = await rolldown({
    input: { [name]: join(folder, `${name}.js`) },
    platform: 'node',
    resolve: { mainFields: ['module', 'main'] },
  });
  const { output } = await bundle.generate({
    format: 'cjs',
    entryFileNames: '[name].cjs',
    chunkFileNames: `${name}-[name]-[hash].cjs`,
    codeSplitting,
    comments: false,
  });
  await bundle.close();
  for (const file of output) {
    if (file.type !== 'chunk') throw new Error(`nobody loads ${file.fileName}`);
    const wanted = [...file.imports, ...file.dynamicImports];
    const names = output.map(({ fileName }) => fileName);
    // A script has no `import` to load it late.
    const isBuiltin = (/** @type {string} */ id) =>
      id.startsWith('node:') && !file.dynamicImports.includes(id);
    const missing = wanted.filter((id) => !isBuiltin(id) && !names.includes(id));
    if (missing.length > 0) throw new Error(`${file.fileName} lacks ${missing.join(', ')}`);
    await writeFile(join(folder, file.fileName), scriptText(file.code));
  }
}

/**
 * The script of a CommonJS module: its digest, and a function of what `loadBundle` hands over.
 * @param {string} code
 */
function scriptText(code) {
  const parameters = 'exports, require, module, __filename, __dirname';
  const script = `(function (${parameters}) {\n${code}})\n`;
  return `// ${createHash('sha256').update(script).digest('hex')}\n${script}`;
}

/**
 * Threads import a module.
 * @param {string} name
 * @param {string[]} jobs
 */
function workerText(name, jobs) {
  return `import { createRequire } from 'node:module';
const { loadBundle } = createRequire(import.meta.url)('./launch.cjs');
export const { ${jobs.join(', ')} } = loadBundle('./${name}.cjs');
`;
}

/**
 * What Node itself loads, as one file.
 * @param {string} input
 * @param {string} file
 * @param {'cjs' | 'esm'} format
 */
async function writePlain(input, file, format) {
  const bundle = await rolldown({ input, platform: 'node' });
  await bundle.write({ format, file: join(folder, file) });
  await bundle.close();
}
