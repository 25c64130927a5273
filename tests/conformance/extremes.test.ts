// Extremes between samples, against brute force: the whole signal by one Fourier transform (fft.js,
// a general-purpose package), H·B/s multiplied exactly, on a grid of 16 × 44.1 or 48 kHz or finer.
// Tolerance: physics.md, section 2: displacement 0.05 µm or 0.1 %, velocity 0.1 dB, acceleration
// 0.2 dB; a peak within 25 µs of the edge of a bin may count in either.
import { beforeAll, describe, expect, test } from 'vitest';
import { bruteMotion, type Compared, compareWithBrute } from '../analysis/brute-motion.js';
import { settingsWith, summaryOf } from '../analysis/summary-of.js';
import { fromLines, type PairLines, toLines } from '../support/brute-force.js';
import { faded, seeded } from '../support/signals.js';

const EDGE_SECONDS = 25e-6;
/** What is so many dB fainter lacks this share. */
const ofDb = (db: number): number => 1 - 10 ** (-db / 20);
/** The absolute ones of velocity and acceleration are for silence: under −120 dB re the loudest. */
const TOLERANCE = {
  displacement: { absolute: 0.05e-6, relative: 0.001 },
  velocity: { absolute: 1e-8, relative: ofDb(0.1) },
  acceleration: { absolute: 1e-3, relative: ofDb(0.2) },
};

/** Lines from 20 Hz to 20 kHz of random phase, falling as f^−tilt; both channels partly alike. */
function randomLines(seed: number, spacing: number, tilt: number): PairLines {
  const next = seeded(seed);
  const count = Math.floor(20_000 / spacing);
  const row = (): { re: number; im: number }[] =>
    Array.from({ length: count }, (_, k) => {
      const amplitude = k * spacing < 20 ? 0 : (k * spacing) ** -tilt;
      const phase = 2 * Math.PI * next();
      return { re: amplitude * Math.cos(phase), im: amplitude * Math.sin(phase) };
    });
  const [left, other] = [row(), row()];
  const right = left.map(({ re, im }, k) => ({
    re: 0.3 * re + (other[k]?.re ?? 0),
    im: 0.3 * im + (other[k]?.im ?? 0),
  }));
  return { left, right };
}

/** Scales lines so that their signals' rms is −20 dB re full scale. */
function levelled(lines: PairLines): PairLines {
  const power = lines.left.reduce((sum, { re, im }) => sum + (re * re + im * im) / 2, 0);
  const scale = 0.1 / Math.sqrt(power);
  const row = (of: PairLines['left']) =>
    of.map(({ re, im }) => ({ re: scale * re, im: scale * im }));
  return { left: row(lines.left), right: row(lines.right) };
}

interface Case {
  readonly name: string;
  readonly rate: number;
  readonly rpm: number;
  readonly tilt: number;
  /** speedTolerance·T on the fine grid, so that the brute force need not interpolate. */
  readonly slack: number;
}

/** Frames of a period of random signal, and how much finer the grid is. */
const GRID: Readonly<Record<number, { readonly period: number; readonly finer: number }>> = {
  44100: { period: 2 ** 16, finer: 16 },
  48000: { period: 2 ** 16, finer: 16 },
  96000: { period: 2 ** 17, finer: 8 },
  192000: { period: 2 ** 18, finer: 4 },
};

const CASES: readonly Case[] = [
  { name: 'white', rate: 44_100, rpm: 100 / 3, tilt: 0, slack: 1270 },
  { name: 'pink', rate: 44_100, rpm: 33.29, tilt: 0.5, slack: 1270 },
  { name: 'bassy', rate: 44_100, rpm: 45, tilt: 1, slack: 60 },
  { name: 'pink', rate: 48_000, rpm: 100 / 3, tilt: 0.5, slack: 6000 },
  { name: 'white', rate: 96_000, rpm: 45, tilt: 0, slack: 1 },
  { name: 'pink', rate: 192_000, rpm: 100 / 3, tilt: 0.5, slack: 1382 },
];

describe.each(CASES)('$name noise at $rate Hz and $rpm rpm', ({ rate, rpm, tilt, slack }) => {
  const { period, finer } = GRID[rate] ?? { period: 0, finer: 0 };
  const turnSeconds = 60 / rpm;
  const speedTolerance = slack / (rate * finer * turnSeconds);
  const settings = settingsWith({ rpm, speedTolerance });
  const frames = Math.round(2.4 * turnSeconds * rate);
  // The start from rest is over after half a second, and must be so a turn ago.
  const fromSeconds = 1.1 * turnSeconds + 0.5;

  let rows: Compared[];
  beforeAll(async () => {
    const lines = levelled(randomLines(rate + rpm, rate / period, tilt));
    const once = fromLines(lines, period);
    const endless = (of: Float64Array) =>
      Float64Array.from({ length: frames }, (_, n) => of[n % period] ?? 0);
    const program = { left: endless(once.left), right: endless(once.right) };
    const brute = bruteMotion(lines, { period, finer, rate, slack }, settings);
    const summary = await summaryOf(program, rate, settings);
    const times = { from: fromSeconds, until: frames / rate, give: EDGE_SECONDS };
    rows = compareWithBrute(summary, brute, times, slack);
  });
  test('every bin and quarter has the extremes of the brute force', () => {
    expectAll(rows, 48);
  });
});

// A turn of 0.8 s is no disc's: it keeps the transform short.
test('a faded program is right from its first bin to the silence after it', async () => {
  const [rate, period, finer, slack] = [44_100, 2 ** 17, 16, 560];
  const settings = settingsWith({ rpm: 75, speedTolerance: slack / (rate * finer * 0.8) });
  const { left, right } = fromLines(levelled(randomLines(5, rate / 2 ** 16, 0.5)), 2 ** 16);
  const end = 1.2 * rate;
  const fade = (of: Float64Array) => faded(of.subarray(0, end), 0.5 * rate);
  const program = { left: fade(left), right: fade(right) };
  const padded = (of: Float64Array) => {
    const longer = new Float64Array(period);
    longer.set(of);
    return longer;
  };
  const lines = toLines({ left: padded(program.left), right: padded(program.right) });
  const brute = bruteMotion(lines, { period, finer, rate, slack }, settings);
  const summary = await summaryOf(program, rate, settings);
  const times = { from: 0, until: summary.quarterCount * 0.2, give: EDGE_SECONDS };
  expectAll(compareWithBrute(summary, brute, times, slack), 12 * 16);
});

function expectAll(rows: readonly Compared[], fewestBins: number): void {
  for (const { name, kind, actual, expected } of rows) {
    const { absolute, relative } = TOLERANCE[kind];
    expect(actual.length).toBeGreaterThanOrEqual(kind === 'displacement' ? fewestBins : 2);
    expect(actual, name).toBeWithin(expected, absolute, relative);
  }
}
