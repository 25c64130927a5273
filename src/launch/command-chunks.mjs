// @ts-check
import { join } from 'node:path';

/**
 * How many chunks must share a module of `forecast` for it to lie with all such modules in one file:
 * each file costs a start time, and what few share would be run for nothing.
 */
const MANY = 4;

/**
 * How the command is cut into files, so that each subcommand loads what it needs.
 * @param {string} folder of the compiled tree
 * @returns {import('rolldown').OutputOptions['codeSplitting']}
 */
export function commandChunks(folder) {
  const entry = join(folder, 'cli.js');
  /** @type {Set<string> | undefined} */
  let started;
  /** @type {Set<string> | undefined} */
  let forecast;
  return {
    groups: [
      { name: 'zod', test: /node_modules\/zod\//, priority: 2 },
      { name: 'pool', test: /node_modules\/tinypool\//, priority: 2 },
      // What is always loaded must not lie with what is loaded for some commands.
      {
        name: (id, modules) => {
          started ??= importsOf(entry, modules);
          return id !== entry && started.has(id) ? 'start' : null;
        },
        debugName: 'start',
        priority: 1,
      },
      {
        name: (id, modules) => {
          forecast ??= importsOf(join(folder, 'commands/run-forecast.js'), modules);
          return forecast.has(id) ? 'shared' : null;
        },
        debugName: 'shared',
        test: (id) => id.startsWith(folder),
        minShareCount: MANY,
      },
    ],
  };
}

/**
 * A module, what it imports, and what that imports.
 * @param {string} entry
 * @param {{ getModuleInfo: (id: string) => { importedIds: string[] } | null }} modules
 */
function importsOf(entry, modules) {
  const ids = new Set([entry]);
  for (const id of ids) {
    for (const imported of modules.getModuleInfo(id)?.importedIds ?? []) ids.add(imported);
  }
  return ids;
}
