// The package on a machine without the vector instructions that the kernel needs, as built. The
// engine is told to do without SSE 4.1, which on other processors than x64 it never had.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deserialize } from 'node:v8';
import { execa } from 'execa';
import { expect, test } from 'vitest';
import type { EdgeWindow, MotionSummary } from '../../src/analysis/motion.js';
import { expectAlike } from '../analysis/alike.js';
import { figuresOf } from '../analysis/figures-of.js';
import { settingsWith } from '../analysis/summary-of.js';
import { noise, tones } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { wavBytes } from '../support/wav-writer.js';

const SCRIPT = fileURLToPath(new URL('./measure-in-parts.mjs', import.meta.url));
const WITHOUT_VECTORS = '--no-enable-sse4-1';
const RATE = 44_100;
const FRAMES = 4 * RATE;

interface Measured {
  readonly hasKernel: boolean;
  readonly partCount: number;
  readonly summary: MotionSummary;
  readonly edges: EdgeWindow | null;
}

async function measuredBy(
  flags: readonly string[],
  path: string,
  sampleRate: number,
): Promise<Measured> {
  // Without a tolerance: how well the two agree on the loose approach is asked of one-pass.test.ts.
  const settings = settingsWith({ rpm: 90, ellipticalHz: 120, speedTolerance: 0 });
  const partSeconds = sampleRate === RATE ? '1' : '60';
  const args = [SCRIPT, path, JSON.stringify(settings), partSeconds, '2'];
  const { stdout } = await execa(process.execPath, [...flags, ...args], { encoding: 'buffer' });
  return deserialize(stdout);
}

async function sideAt(sampleRate: number): Promise<string> {
  const bass = tones([{ hz: 71, amplitude: 0.4 }], FRAMES, RATE);
  const apart = noise(FRAMES, 8, 0.2);
  const words = Float64Array.from({ length: 2 * FRAMES }, (_, index) => {
    const frame = index >> 1;
    const sign = index % 2 === 0 ? 1 : -1;
    return 32_767 * ((bass[frame] ?? 0) + sign * (apart[frame] ?? 0));
  }).map(Math.round);
  const path = join(await temporaryFolder(), 'side.wav');
  await writeFile(path, wavBytes({ sampleRate, words }));
  return path;
}

test.runIf(process.arch === 'x64')(
  'without vector instructions a side in parts has the same figures to 1e-9',
  async () => {
    const path = await sideAt(RATE);
    const plain = await measuredBy([WITHOUT_VECTORS], path, RATE);
    const fast = await measuredBy([], path, RATE);
    expect([fast.hasKernel, plain.hasKernel]).toEqual([true, false]);
    expect([fast.partCount, plain.partCount]).toEqual([4, 4]);
    expectAlike(figuresOf(plain.summary), figuresOf(fast.summary));
    const [edges, wanted] = [plain.edges, fast.edges];
    if (edges === null || wanted === null) throw new Error('no edges');
    expect(Math.max(...wanted.inner)).toBeGreaterThan(1e-6);
    expect(edges.inner).toBeWithin(wanted.inner, 1e-14);
    expect(edges.outer).toBeWithin(wanted.outer, 1e-14);
    expect(edges.margin).toBe(wanted.margin);
  },
);

test.runIf(process.arch === 'x64')('and so has one at a rate of neither family', async () => {
  const path = await sideAt(32_000);
  const plain = await measuredBy([WITHOUT_VECTORS], path, 32_000);
  const fast = await measuredBy([], path, 32_000);
  expect([fast.hasKernel, plain.hasKernel]).toEqual([true, false]);
  expect(plain.partCount).toBe(1);
  expectAlike(figuresOf(plain.summary), figuresOf(fast.summary));
});

test('a process without WebAssembly has no kernel, and says so', async () => {
  const script = `
    import { kernelIsAvailable } from './dist/analysis/analyse-part.js';
    process.stdout.write(String(await kernelIsAvailable()));`;
  const cwd = fileURLToPath(new URL('../../', import.meta.url));
  const args = ['--jitless', '--input-type=module', '--eval', script];
  expect((await execa(process.execPath, args, { cwd })).stdout).toBe('false');
});
