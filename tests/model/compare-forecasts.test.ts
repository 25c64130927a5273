import { describe, expect, test } from 'vitest';
import { compareForecasts, isUnchanged } from '../../src/model/compare-forecasts.js';
import { programShift } from '../../src/model/compare-shift.js';
import {
  comparedSide,
  inventedProgram,
  louderBetween,
  RATE,
  shifted,
} from '../support/invented-program.js';
import { inBoth, tones } from '../support/signals.js';

const TURN = 1.8;
const PROGRAM = inventedProgram(40);
const before = await comparedSide(PROGRAM);

test('the program that is compared has land and findings to lose', () => {
  const ids = new Set(before.forecast.findings.map(({ id }) => id));
  for (const id of ['overcut', 'land-low'] as const) expect(ids).toContain(id);
});

test('the same program twice has not changed', async () => {
  const comparison = compareForecasts(before, await comparedSide(PROGRAM));
  expect(isUnchanged(comparison)).toBe(true);
});

describe('a copy 3 dB louder', async () => {
  const comparison = compareForecasts(before, await comparedSide(louderBetween(PROGRAM, 3)));

  test('does not start later, and is 3 dB louder by BS.1770', () => {
    const { offsetSeconds, loudnessLufs } = comparison;
    expect(offsetSeconds).toBe(0);
    expect((loudnessLufs?.after ?? 0) - (loudnessLufs?.before ?? 0)).toBeWithin(3, 0.01);
  });

  test('has 3 dB less without a fault: motion is linear in level', () => {
    const { traceDb } = comparison;
    expect((traceDb?.after ?? 0) - (traceDb?.before ?? 0)).toBeWithin(-3, 2 / 256);
  });

  test('has only new and worse findings, and only lost land', () => {
    const changes = new Set(comparison.findings.map(({ change }) => change));
    expect(changes).toEqual(new Set(['new', 'worse']));
    expect(new Set(comparison.land.map(({ change }) => change))).toEqual(new Set(['lost']));
  });

  test('the other way round has what was new gone, and what was worse better', async () => {
    const back = compareForecasts(await comparedSide(louderBetween(PROGRAM, 3)), before);
    const mirrored = comparison.findings.map(({ change }) =>
      change === 'new' ? 'gone' : 'better',
    );
    expect(back.findings.map(({ change }) => change).sort()).toEqual(mirrored.sort());
    expect(back.land.map((land) => land.before)).toEqual(comparison.land.map((land) => land.after));
  });
});

describe('a copy with one passage 6 dB louder', async () => {
  const after = await comparedSide(louderBetween(PROGRAM, 6, 20, 24));
  const { offsetSeconds, land, findings } = compareForecasts(before, after);

  test('starts when it did', () => expect(offsetSeconds).toBe(0));

  test('has lost land there, and up to a turn behind it, where it is the neighbour', () => {
    expect(land.length).toBeGreaterThan(0);
    for (const { change, atSeconds, untilSeconds, ...amount } of land) {
      expect(change).toBe('lost');
      expect(atSeconds).toBeGreaterThanOrEqual(20 - TURN / 4);
      expect(untilSeconds).toBeLessThanOrEqual(24 + TURN + TURN / 4);
      expect(amount.before - amount.after).toBeGreaterThanOrEqual(3e-6);
    }
  });

  test('has changed findings there and nowhere else', () => {
    expect(findings.length).toBeGreaterThan(0);
    for (const { change, after: is } of findings) {
      expect(['new', 'worse']).toContain(change);
      if (is?.atSeconds == null) continue;
      expect(is.untilSeconds ?? is.atSeconds).toBeGreaterThanOrEqual(20);
      expect(is.atSeconds).toBeLessThanOrEqual(24 + TURN);
    }
  });
});

describe('a copy that starts', () => {
  test.each([0.8, 0.06, 3.33, -0.37, -2.6, 17])(
    '%d s later: by as much, and no finding is new or gone',
    async (seconds) => {
      const after = await comparedSide(shifted(PROGRAM, seconds));
      const { offsetSeconds, findings } = compareForecasts(before, after);
      expect(offsetSeconds ?? Number.NaN).toBeWithin(seconds, 0.02);
      const lost = Math.max(0, -seconds) + 2 * TURN;
      const moved = findings.filter(
        ({ before: was, after: is }) => (was ?? is)!.atSeconds! >= lost,
      );
      expect(moved).toEqual([]);
    },
  );

  test('0.8 s later is known to a tenth of a second or so without the summaries', async () => {
    const after = await comparedSide(shifted(PROGRAM, 0.8));
    const shift = programShift({ ...before, motion: null }, { ...after, motion: null });
    expect(shift ?? Number.NaN).toBeWithin(0.8, 0.15);
  });

  test('0.8 s later and 3 dB louder: both', async () => {
    const after = await comparedSide(louderBetween(shifted(PROGRAM, 0.8), 3));
    expect(programShift(before, after) ?? Number.NaN).toBeWithin(0.8, 0.02);
  });
});

test('a copy with its last ten seconds cut has only lost what was in them', async () => {
  const cut = { left: PROGRAM.left.slice(0, 30 * RATE), right: PROGRAM.right.slice(0, 30 * RATE) };
  const comparison = compareForecasts(before, await comparedSide(cut));
  const { offsetSeconds, durationSeconds, endDiameter, spare, findings, land } = comparison;
  expect(offsetSeconds).toBe(0);
  expect(durationSeconds).toEqual({ before: 40, after: 30 });
  // Ten seconds at one pitch: 10/1.8 turns of 90 µm on each side of the centre.
  const turns = 10 / TURN;
  expect((spare?.after ?? 0) - (spare?.before ?? 0)).toBeWithin(turns * 90e-6, 1e-9);
  expect((endDiameter?.after ?? 0) - (endDiameter?.before ?? 0)).toBeWithin(turns * 180e-6, 1e-9);
  expect(findings.length).toBeGreaterThan(0);
  // Where the program breaks off is a jump now, and the one at its former end is gone.
  const jumps = findings.filter(({ before: was, after: is }) => (is ?? was)?.id === 'jump');
  expect(jumps.map(({ change, atSeconds }) => [change, Math.round(atSeconds ?? 0)])).toEqual([
    ['new', 30],
    ['gone', 40],
  ]);
  for (const { change, before: was } of findings) {
    if (was?.id === 'jump' || change === 'new') continue;
    // One that the cut goes through has lost its worst place.
    expect(['gone', 'better']).toContain(change);
    expect(was?.untilSeconds).toBeGreaterThanOrEqual(30);
  }
  expect(land).toEqual([]);
});

test('another program is like it at no shift; times are compared as they stand', async () => {
  const { offsetSeconds, findings } = compareForecasts(
    before,
    await comparedSide(inventedProgram(40, 2)),
  );
  expect(offsetSeconds).toBeNull();
  expect(findings.length).toBeGreaterThan(0);
});

test('steady tones have no place of their own: no shift', async () => {
  const tone = (hz: number) => inBoth(tones([{ hz, amplitude: 0.1 }], 10 * RATE, RATE));
  const [one, other] = [await comparedSide(tone(100)), await comparedSide(tone(100))];
  expect(programShift(one, other)).toBe(0);
});

test.each(['machine', 'plan', 'fixed'] as const)(
  'land is that of the plan that the lathe executes: %s',
  async (executes) => {
    const settings = { executes, landMin: 40e-6, echoLand: 40e-6, basePitch: 130e-6 };
    const was = await comparedSide(PROGRAM, settings);
    const column = Float64Array.from(was.forecast.quarters.land);
    const land = {
      machine: was.forecast.quarters.machineLand,
      plan: column,
      // Still land − approach; the pass knows neither the planner nor the disc.
      fixed: was.forecast.quarters.approachLoose.map((near) => 130e-6 - 50.8e-6 - 6.5e-6 - near),
    }[executes];
    const is = await comparedSide(louderBetween(PROGRAM, 6, 20, 24), settings);
    const lost = compareForecasts(was, is).land.filter(({ change }) => change === 'lost');
    for (const { atSeconds, untilSeconds, before: least } of lost) {
      const quarters = land.slice(
        Math.round(atSeconds / (TURN / 4)),
        Math.round(untilSeconds / (TURN / 4)),
      );
      expect(Array.from(quarters, (value) => Math.min(value, 40e-6))).toContain(least);
    }
    expect(lost.length > 0 || executes !== 'fixed').toBe(true);
  },
);
