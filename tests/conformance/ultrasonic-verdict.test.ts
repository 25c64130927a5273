// A file of 96 kHz and the same with a tone of −50 dBFS at 40 kHz, through the built command.
// Source: physics.md, section 2: every source is judged in the same band, so that what lies above
// it, such as a converter's noise, is told but decides nothing. The music is invented.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { runFurrow, withFolder } from '../support/run-furrow.js';
import { noise, tones } from '../support/signals.js';
import { wavBytes } from '../support/wav-writer.js';

const RATE = 96_000;
const FRAMES = 4 * RATE;
/** Struck notes: Hz, seconds from the start, share on the left. */
const NOTES = [
  { hz: 55, at: 0, left: 0.5 },
  { hz: 220, at: 0.2, left: 0.65 },
  { hz: 82.4, at: 1, left: 0.5 },
  { hz: 660, at: 1.3, left: 0.1 },
  { hz: 1760, at: 2.1, left: 0.7 },
  { hz: 49, at: 2.6, left: 0.45 },
] as const;
const BRUSH_SECONDS = 0.5;

/** Notes that die away and a brush on every half second, interleaved; peaks under full scale. */
function music(): Float64Array {
  const mixed = new Float64Array(2 * FRAMES);
  for (const { hz, at, left } of NOTES) {
    const from = Math.round(at * RATE);
    const parts = [1, 2, 3, 5].map((n) => ({ hz: n * hz, amplitude: 0.3 / n ** 2 }));
    for (const [n, value] of tones(parts, FRAMES - from, RATE).entries()) {
      const struck = value * Math.exp((-2 * n) / RATE);
      mixed[2 * (from + n)]! += left * struck;
      mixed[2 * (from + n) + 1]! += (1 - left) * struck;
    }
  }
  const hiss = noise(FRAMES, 77, 0.01);
  for (let n = 8; n < FRAMES; n++) {
    // A mean of eight keeps most of the brush under 12 kHz.
    const mean = hiss.subarray(n - 8, n).reduce((sum, value) => sum + value, 0) / 8;
    const brush = mean * Math.exp((-20 * (n % (BRUSH_SECONDS * RATE))) / RATE);
    mixed[2 * n]! += brush;
    mixed[2 * n + 1]! += brush / 2;
  }
  return mixed;
}

function withTone(program: Float64Array, hz: number, dbfs: number): Float64Array {
  const tone = tones([{ hz, amplitude: 10 ** (dbfs / 20) }], FRAMES, RATE);
  return program.map((value, index) => value + (tone[Math.floor(index / 2)] ?? 0));
}

/** Sides of 24-bit files of these programs on a small disc, whose bends are the tightest. */
async function sidesOf(programs: readonly Float64Array[], levelDb: number) {
  return await withFolder(async (folder) => {
    const names = programs.map((_, index) => `${index}.wav`);
    for (const [index, program] of programs.entries()) {
      const words = program.map((value) => Math.round(value * 2 ** 23));
      const bytes = wavBytes({ words, bitDepth: 24, sampleRate: RATE });
      await writeFile(join(folder, `${index}.wav`), bytes);
    }
    const profile = ['--no-discovery', '--disc', '7', '--rpm', '33'];
    const flags = [...profile, '--level', String(levelDb), '--json'];
    const { stdout } = await runFurrow(['forecast', ...names, ...flags], { cwd: folder });
    return forecastSchema.parse(JSON.parse(stdout)).sides;
  });
}

const plain = music();

describe('a tone of −50 dBFS at 40 kHz', () => {
  const toned = withTone(plain, 40_000, -50);

  test.each([
    [6, 'clear', []],
    [9, 'caution', ['facet']],
    [12, 'fault', ['facet', 'low-vertical']],
  ])('at level %i dB is told and decides nothing: %s', async (levelDb, verdict, ids) => {
    const [without, with_] = await sidesOf([plain, toned], levelDb);
    expect(without?.verdict).toBe(verdict);
    expect(new Set(without?.findings.map(({ id }) => id))).toEqual(new Set(ids));
    expect(with_?.verdict).toBe(verdict);
    expect(with_?.findings.filter(({ id }) => id !== 'ultrasonic')).toEqual(without?.findings);
    const told = with_?.findings.find(({ id }) => id === 'ultrasonic');
    // Half a decibel for the end of the band, whose slope begins at 20 kHz.
    expect(told?.value).toBeWithin(-50, 0.5);
  });
});

// So that the tests above could fail: the acceleration that the tone would have, (40/16)² times as
// much at 16 kHz, decides when it lies within the band.
test('a tone of the same acceleration within the band does decide', async () => {
  const inBand = withTone(plain, 16_000, -50 + 40 * Math.log10(40 / 16));
  const [without, with_] = await sidesOf([plain, inBand], 6);
  expect(without?.verdict).toBe('clear');
  expect(with_?.verdict).not.toBe('clear');
  expect(with_?.findings.map(({ id }) => id)).toContain('tight-bend');
});
