import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** Script and style of a page, each in one piece: what the build writes and what tests use. */
export async function bundlePage() {
  const { outputFiles } = await build({
    entryPoints: ['main.ts', 'page.css'].map((name) =>
      fileURLToPath(new URL(name, import.meta.url)),
    ),
    bundle: true,
    write: false,
    outdir: 'page',
    minify: true,
    format: 'esm',
    target: 'es2022',
    charset: 'utf8',
    legalComments: 'inline',
    logLevel: 'warning',
  });
  const textOf = (ending) => outputFiles.find(({ path }) => path.endsWith(ending))?.text ?? '';
  return { script: textOf('main.js'), style: textOf('page.css') };
}
