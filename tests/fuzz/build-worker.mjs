// @ts-check
import { copyFile, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
/** Beside the packages, so that what stays outside of the bundle is found from there. */
const FOLDER = join(ROOT, 'node_modules/.cache/furrow-fuzz');

/** Bundles the worker with the code as it is, and gives its path. */
export async function buildWorker() {
  await build({
    entryPoints: [join(ROOT, 'tests/fuzz/fuzz-worker.ts')],
    outdir: FOLDER,
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    mainFields: ['module', 'main'],
    external: ['highs', 'tinypool'],
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
    sourcemap: true,
    logLevel: 'warning',
  });
  await mkdir(FOLDER, { recursive: true });
  const kernel = 'motion-kernel.wasm';
  await copyFile(join(ROOT, 'src/analysis/kernel', kernel), join(FOLDER, kernel));
  return join(FOLDER, 'fuzz-worker.js');
}
