// @ts-check
import { join, resolve } from 'node:path';
import { rolldown } from 'rolldown';

// Bundles the command of a compiled tree in place: node src/commands/write-bundle.mjs dist

const folder = resolve(process.argv[2] ?? 'dist');
const entry = join(folder, 'cli.js');

/**
 * How many chunks must share a module for it to lie with all such modules in one file: each file
 * costs a start a third of a millisecond, and what few share would be loaded for nothing.
 */
const MANY = 4;

/** @type {Set<string> | undefined} */
let started;

const bundle = await rolldown({
  input: { cli: entry },
  platform: 'node',
  // It loads files from beside itself.
  external: ['tinypool'],
  resolve: { mainFields: ['module', 'main'] },
});
await bundle.write({
  dir: folder,
  chunkFileNames: '[name]-[hash].js',
  codeSplitting: {
    groups: [
      { name: 'zod', test: /node_modules\/zod\//, priority: 2 },
      // What is always loaded must not lie with what is loaded for some commands.
      { name: startName, debugName: 'start', priority: 1 },
      { name: 'shared', test: (id) => id.startsWith(folder), minShareCount: MANY },
    ],
  },
});
await bundle.close();

/**
 * @param {string} id
 * @param {{ getModuleInfo: (id: string) => { importedIds: string[] } | null }} modules
 */
function startName(id, modules) {
  started ??= startOf(modules);
  return id !== entry && started.has(id) ? 'start' : null;
}

/**
 * What the entry imports, and what that imports.
 * @param {{ getModuleInfo: (id: string) => { importedIds: string[] } | null }} modules
 */
function startOf(modules) {
  const ids = new Set([entry]);
  for (const id of ids) {
    for (const imported of modules.getModuleInfo(id)?.importedIds ?? []) ids.add(imported);
  }
  return ids;
}
