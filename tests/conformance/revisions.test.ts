/**
 * Revisions of recordings that this project did not make: npm's supersonic-scsynth-samples (CC0),
 * put end to end. The delay between two copies is exact by construction, whole frames of silence.
 */
import { describe, expect, test } from 'vitest';
import { compareForecasts, isUnchanged } from '../../src/model/compare-forecasts.js';
import { programShift } from '../../src/model/compare-shift.js';
import { comparedSide, louderBetween, RATE, shifted } from '../support/invented-program.js';
import { realRecordings, wordsOf } from '../support/real-recordings.js';

const SECONDS = 60;
const words = wordsOf(await realRecordings(), 24, 2 * SECONDS);

/** A minute of the recordings from a time on, full scale 1. */
function minuteFrom(seconds: number) {
  const channel = (offset: 0 | 1) =>
    Float64Array.from(
      { length: SECONDS * RATE },
      (_, frame) => words[2 * (seconds * RATE + frame) + offset]! / 2 ** 23,
    );
  return { left: channel(0), right: channel(1) };
}

const program = minuteFrom(0);
const before = await comparedSide(program);

test('the recordings have findings to lose', () => {
  expect(before.forecast.findings.length).toBeGreaterThan(3);
});

describe('a copy', () => {
  test.each([0.8, 7.3137, -0.25, -11.02])('%d s later is known to start so', async (seconds) => {
    const after = await comparedSide(shifted(program, seconds));
    // A bin is 28 ms; the parabola between bins leaves less than half of one.
    expect(programShift(before, after) ?? Number.NaN).toBeWithin(seconds, 0.014);
    const { findings } = compareForecasts(before, after);
    const inBoth = findings.filter(({ atSeconds }) => (atSeconds ?? 0) > Math.max(0, seconds) + 4);
    expect(inBoth).toEqual([]);
  });

  test('6 dB down and 2.2 s later is known to start so', async () => {
    const after = await comparedSide(louderBetween(shifted(program, 2.2), -6));
    expect(programShift(before, after) ?? Number.NaN).toBeWithin(2.2, 0.014);
  });

  test('that is the same has not changed', async () => {
    expect(isUnchanged(compareForecasts(before, await comparedSide(program)))).toBe(true);
  });
});

test('the next minute of recordings is another program', async () => {
  expect(programShift(before, await comparedSide(minuteFrom(SECONDS)))).toBeNull();
});
