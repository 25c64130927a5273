import { readFile } from 'node:fs/promises';

/** What every page carries: bundled by the build, the same for all sides. */
export interface PageAssets {
  readonly script: string;
  readonly style: string;
}

/** Reads them from where the build puts them, beside this module. */
export async function readPageAssets(): Promise<PageAssets> {
  const [script, style] = await Promise.all([read('page.js'), read('page.css')]);
  return { script, style };
}

async function read(name: string): Promise<string> {
  return await readFile(new URL(`./${name}`, import.meta.url), 'utf8');
}
