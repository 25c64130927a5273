// @ts-check
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { calmSide, roughSide } from './demo/sides.mjs';
import { writeWav } from './demo/write-wav.mjs';

// Plays two invented sides into files and forecasts them as a user would: npm run demo

const examples = fileURLToPath(new URL('.', import.meta.url));
const folder = join(examples, 'demo-sides');
const profile = join(examples, 'furrow.profile.json');
const command = fileURLToPath(new URL('../bin/furrow.js', import.meta.url));

mkdirSync(folder, { recursive: true });
for (const makeSide of [roughSide, calmSide]) {
  const { file, tape } = makeSide();
  writeWav(join(folder, file), tape);
}

const shown = ['forecast', '--profile', profile, folder].map((word) =>
  word.startsWith(examples) ? relative(process.cwd(), word) : word,
);
process.stdout.write(`$ furrow ${shown.join(' ')}\n\n`);
const { status } = spawnSync(process.execPath, [command, ...shown], { stdio: 'inherit' });
process.exitCode = status ?? 1;
