import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { readCodeCache } from './code-cache.js';

/** A bundled file that was run. */
export interface LoadedFile {
  readonly source: string;
  readonly script: Script;
  readonly module: { exports: object };
}

/** Every bundled file that was run, by its path. */
export const loadedFiles = new Map<string, LoadedFile>();

/** Where the build puts this module and all it loads. */
const FOLDER = import.meta.dirname;

const requireBuiltin = createRequire(import.meta.url);

/**
 * What a bundled file exports, run if it was not yet: each is a script whose value is a function of
 * what a CommonJS module is given. Unlike `require`, this takes the code that V8 has kept of it.
 * @param name a file beside this one, or a module of Node itself
 */
export function loadBundle(name: string): unknown {
  if (!name.startsWith('./')) return requireBuiltin(name);
  const path = join(FOLDER, name);
  const loaded = loadedFiles.get(path) ?? run(path);
  return loaded.module.exports;
}

function run(path: string): LoadedFile {
  const source = readFileSync(path, 'utf8');
  const cachedData = readCodeCache(path, source);
  const script = new Script(source, { filename: path, ...(cachedData && { cachedData }) });
  const loaded = { source, script, module: { exports: {} } };
  // Files that load each other see what is there of the other.
  loadedFiles.set(path, loaded);
  const body: unknown = script.runInThisContext();
  if (typeof body !== 'function') throw new Error(`${path} is not as the build left it`);
  body(loaded.module.exports, loadBundle, loaded.module, path, FOLDER);
  return loaded;
}
