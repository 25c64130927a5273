// @ts-check
import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Runs every file of tests that has properties so many times, each time with a seed of its own
 * (tests/support/fast-check-seed.ts), and tells what fails.
 * @param {number} rounds
 * @returns how many rounds failed
 */
export function tryProperties(rounds) {
  let failed = 0;
  for (let round = 0; round < rounds; round++) {
    const seed = String(randomInt(2 ** 31));
    const { status, stdout } = spawnSync('npx', ['vitest', 'run', ...filesWithProperties()], {
      cwd: ROOT,
      encoding: 'utf8',
      env: { ...process.env, FURROW_SEED: seed, NO_COLOR: '1' },
      maxBuffer: 2 ** 28,
    });
    process.stdout.write(
      `properties with FURROW_SEED=${seed}: ${status === 0 ? 'hold' : 'FAIL'}\n`,
    );
    if (status === 0) continue;
    failed += 1;
    process.stdout.write(`${stdout.slice(-20_000)}\n`);
  }
  return failed;
}

function filesWithProperties() {
  const files = readdirSync(join(ROOT, 'tests'), { recursive: true, encoding: 'utf8' });
  return files
    .filter((file) => file.endsWith('.test.ts'))
    .map((file) => join('tests', file))
    .filter((file) => readFileSync(join(ROOT, file), 'utf8').includes("from 'fast-check'"));
}
