import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { type HarnessData, packHarness } from './harness-data.js';

const PAGE = '../../../../../src/report/html/page';

/** A page with the pictures of one side and nothing else. */
export async function harnessHtml(data: HarnessData): Promise<string> {
  return harnessPage(packHarness(data), await bundle());
}

async function bundle(): Promise<{ readonly script: string; readonly style: string }> {
  const entries = [
    new URL('./harness-page.ts', import.meta.url),
    new URL(`${PAGE}/paper.css`, import.meta.url),
    new URL(`${PAGE}/pictures/pictures.css`, import.meta.url),
  ];
  const { outputFiles } = await build({
    entryPoints: entries.map((entry) => fileURLToPath(entry)),
    bundle: true,
    write: false,
    outdir: 'page',
    format: 'esm',
    target: 'es2022',
  });
  const textsOf = (ending: string) =>
    outputFiles.filter((file) => file.path.endsWith(ending)).map(({ text }) => text);
  return { script: textsOf('.js').join('\n'), style: textsOf('.css').join('\n') };
}

function harnessPage(data: string, { script, style }: { script: string; style: string }): string {
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Pictures</title>
<style>${style}
body { margin: 16px; background: var(--paper); color: var(--ink); font-family: var(--type) }
section { margin: 0 0 32px }
</style>
<main><h1>Pictures</h1></main>
<script type="application/json" id="data">${data}</script>
<script type="module">${script.replaceAll('</script', '<\\/script')}</script>
</html>`;
}
