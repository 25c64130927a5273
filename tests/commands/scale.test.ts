import { expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { runFurrow } from '../support/run-furrow.js';
import { longWav, NARROW_LATHE } from '../support/side-files.js';

const SECONDS = 125;
/** Of the narrow lathe's fixed pitch. */
const PITCH_MM = 0.09;

const forecast = async (cwd: string, ...args: string[]) =>
  await runFurrow(['forecast', 'side.wav', '--quiet', ...args], {
    cwd,
    env: { LC_ALL: 'C.UTF-8', NO_COLOR: '1' },
  });

/** Lines that begin with a time: [seconds, diameter]. */
function rowsOf(text: string, unit: string): [number, number][] {
  const row = new RegExp(`^[> ] (\\d\\d):(\\d\\d(?:\\.\\d)?) +([\\d.]+) ${unit}`, 'gm');
  return [...text.matchAll(row)].map(([, minutes, seconds, diameter]) => [
    60 * Number(minutes) + Number(seconds),
    Number(diameter),
  ]);
}

// A spiral of one pitch: d(t) = d0 − 2·p·n·t, with 292.1 mm and 33⅓ rpm. Source: arithmetic.
test.each([
  ['metric', 'mm', 1],
  ['us', 'in', 1 / 25.4],
] as const)(
  '--scale in %s tells every minute and hot spot, on the spiral of a fixed pitch',
  async (units, unit, factor) => {
    const cwd = await filledFolder([['side.wav', longWav(SECONDS)], NARROW_LATHE]);
    const { stdout, exitCode } = await forecast(cwd, '--scale', '--units', units);
    const rows = rowsOf(stdout, unit);
    const json = await forecast(cwd, '--json');
    const spots = forecastSchema.parse(JSON.parse(json.stdout)).sides[0]?.hotSpots ?? [];
    expect(spots.length).toBeGreaterThan(2);
    for (const minute of [0, 60, 120, SECONDS]) {
      expect(rows.filter(([at]) => at === minute)).toHaveLength(1);
    }
    for (const { atSeconds } of spots) {
      const there = rows.filter(([at]) => Math.abs(at - (atSeconds ?? 0)) <= 0.051);
      expect(there.length, `${atSeconds}`).toBeGreaterThan(0);
    }
    for (const [at, diameter] of rows) {
      const onSpiral = (292.1 - 2 * PITCH_MM * (100 / 3 / 60) * at) * factor;
      // A digit of the diameter, and half a digit of the time.
      expect(diameter).toBeWithin(onSpiral, unit === 'mm' ? 0.06 : 0.001);
    }
    expect(stdout.match(/; next: |^ .* {3}next: /gm)?.length).toBeGreaterThan(3);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(exitCode).toBe(0);
  },
);

test('--scale goes with no JSON', async () => {
  const { stderr, exitCode } = await runFurrow(['forecast', 'x.wav', '--scale', '--json']);
  expect(stderr).toContain("'--scale' cannot be used with option '--json'");
  expect(exitCode).toBe(2);
});
