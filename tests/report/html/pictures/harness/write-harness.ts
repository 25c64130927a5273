import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { type HarnessData, packHarness } from './harness-data.js';

const PAGE = new URL('../../../../../src/report/html/page/', import.meta.url);
const ENTRY = fileURLToPath(new URL('./harness-page.ts', import.meta.url));

/** Writes a page with the pictures of one side and nothing else. */
export async function writeHarness(path: string, data: HarnessData): Promise<void> {
  const { outputFiles } = await build({
    entryPoints: [ENTRY],
    bundle: true,
    write: false,
    format: 'esm',
    target: 'es2022',
  });
  const [script] = outputFiles;
  const paper = await readFile(new URL('paper.css', PAGE), 'utf8');
  const pictures = await readFile(new URL('pictures/pictures.css', PAGE), 'utf8');
  await writeFile(
    path,
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>Pictures</title>
<meta name="viewport" content="width=device-width">
<style>${paper}${pictures}
body { margin: 16px; background: var(--paper); color: var(--ink); font-family: var(--type) }
section { margin: 0 0 32px }</style>
<main></main>
<script type="application/json" id="data">${packHarness(data)}</script>
<script type="module">${(script?.text ?? '').replaceAll('</script', '<\\/script')}</script>
</html>`,
  );
}
