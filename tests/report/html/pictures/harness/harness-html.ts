import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { type HarnessData, packHarness } from './harness-data.js';

const entry = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** A page with the pictures of one side and nothing else. */
export async function harnessHtml(data: HarnessData): Promise<string> {
  return harnessPage(packHarness(data), await bundle());
}

async function bundle(): Promise<{ readonly script: string; readonly style: string }> {
  const { outputFiles } = await build({
    stdin: {
      contents: [
        'import "./harness-page.ts";',
        'import "../../../../../src/report/html/page/paper.css";',
        'import "../../../../../src/report/html/page/pictures/pictures.css";',
      ].join('\n'),
      resolveDir: entry('.'),
    },
    bundle: true,
    write: false,
    outdir: 'page',
    format: 'esm',
    target: 'es2022',
  });
  const textOf = (ending: string) =>
    outputFiles.find((file) => file.path.endsWith(ending))?.text ?? '';
  return { script: textOf('.js'), style: textOf('.css') };
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
