import { writeFile } from 'node:fs/promises';
import { bundlePage } from './bundle.mjs';

// Each folder given gets page.js and page.css.
const { script, style } = await bundlePage();
for (const folder of process.argv.slice(2)) {
  await writeFile(`${folder}/page.js`, script);
  await writeFile(`${folder}/page.css`, style);
}
