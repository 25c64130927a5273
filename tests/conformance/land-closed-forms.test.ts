/**
 * Land and width where geometry has a closed form (calculated; T = 1.8 s, a groove of 2 mil).
 * The walls' displacements are given, so no recording curve is in between.
 */
import { describe, expect, test } from 'vitest';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, settingsWith } from '../support/model-settings.js';
import { type Displacement, motionOf } from '../support/motion-of.js';

const T = 1.8;
const W0 = 50.8e-6;
const PITCH = 200e-6;
const AMPLITUDE = 20e-6;

const sine =
  (frequency: number, amplitude: number): Displacement =>
  (at) =>
    amplitude * Math.sin(2 * Math.PI * frequency * at);

/** Least land and width in the second turn of three, at fixed pitch. */
function leastIn(left: Displacement, right: Displacement, changes: Partial<Settings> = {}) {
  const settings = settingsWith({ ...EXACT, basePitch: PITCH, baseWidth: W0, ...changes });
  const { speedTolerance } = settings;
  const motion = motionOf({ turns: 3, turnSeconds: T, speedTolerance, left, right });
  const side = plannedSide(motion, settings);
  const { land, widthMin, widthMax } = verify(side, planSide(side, 'fixed', 0));
  const second = (row: Float64Array) => row.subarray(side.lead + 4, side.lead + 8);
  return {
    land: Math.min(...second(land)),
    widthMin: Math.min(...second(widthMin)),
    widthMax: Math.max(...second(widthMax)),
  };
}

describe('silence', () => {
  test.each([
    [300, 33.87e-6, 0.005e-6],
    [200, 76.2e-6, 1e-12],
  ])('at %d LPI leaves %d m beside a groove of 2 mil', (lpi, land, within) => {
    const settings = settingsWith({ ...EXACT, basePitch: 0.0254 / lpi, baseWidth: W0 });
    const side = plannedSide(emptyMotion(3 * T, T), settings);
    expect(verify(side, planSide(side, 'fixed', 0)).land).toBeWithin(
      Array.from({ length: side.count }, () => land),
      within,
    );
  });

  test('loses the tolerances of depth twice and of pitch once', () => {
    const settings = settingsWith({ basePitch: PITCH, baseWidth: W0 });
    const side = plannedSide(emptyMotion(T, T), settings);
    const { land, landNominal } = verify(side, planSide(side, 'fixed', 0));
    expect(landNominal[6]! - land[6]!).toBeWithin(2 * 2.5e-6 + 1.5e-6, 1e-15);
  });
});

describe('both walls alike, lateral amplitude A', () => {
  const wall = AMPLITUDE / Math.SQRT2;

  test.each([
    ['run parallel, no land is lost', 100],
    ['run against each other, 2A is lost', 100 + 5 / 18],
    ['lose 2A·|sin πfT|', 100.1],
    ['lose 2A·|sin πfT|', 33],
  ])('neighbouring turns %s at %d Hz', (_, frequency) => {
    const lost = 2 * AMPLITUDE * Math.abs(Math.sin(Math.PI * frequency * T));
    const { land, widthMin } = leastIn(sine(frequency, wall), sine(frequency, wall));
    expect(land).toBeWithin(PITCH - W0 - lost, 0.005e-6);
    expect(widthMin).toBeWithin(W0, 1e-12);
  });

  test('a speed tolerance of 0.1 % costs 1.07·A at 100 Hz, where turns would run parallel', () => {
    const { land } = leastIn(sine(100, wall), sine(100, wall), { speedTolerance: 0.001 });
    // Two digits are given.
    expect(land).toBeWithin(PITCH - W0 - 1.07 * AMPLITUDE, 0.005 * AMPLITUDE);
    const exact = 2 * AMPLITUDE * Math.sin(Math.PI * 100 * 0.001 * T);
    expect(land).toBeWithin(PITCH - W0 - exact, 0.005e-6);
  });
});

test.each([100, 100 + 5 / 18, 77])('one wall loses √2·a at %d Hz, whatever it is', (frequency) => {
  const moving = sine(frequency, AMPLITUDE);
  const still: Displacement = () => 0;
  const land = PITCH - W0 - Math.SQRT2 * AMPLITUDE;
  expect(leastIn(moving, still).land).toBeWithin(land, 0.005e-6);
  expect(leastIn(still, moving).land).toBeWithin(land, 0.005e-6);
});

test.each([
  [100, 'all of 2Z'],
  [100 + 5 / 18, 'nothing'],
  [40.3, '2Z·|cos πfT|'],
])('opposed walls at %d Hz lose %s', (frequency) => {
  const wall = AMPLITUDE / Math.SQRT2;
  const { land } = leastIn(sine(frequency, wall), sine(frequency, -wall));
  const lost = 2 * AMPLITUDE * Math.abs(Math.cos(Math.PI * frequency * T));
  expect(land).toBeWithin(PITCH - W0 - lost, 0.005e-6);
});

test('a groove of 56 µm can be lifted by 15.3 µm until 25.4 µm of its width are left', () => {
  const wall = 15.3e-6 / Math.SQRT2;
  const { widthMin, widthMax } = leastIn(sine(50, wall), sine(50, -wall), { baseWidth: 56e-6 });
  // The amplitude is given to a tenth of a micrometre.
  expect(widthMin).toBeWithin(25.4e-6, 0.1e-6);
  expect(widthMin).toBeWithin(56e-6 - 2 * 15.3e-6, 0.005e-6);
  expect(widthMax).toBeWithin(56e-6 + 2 * 15.3e-6, 0.005e-6);
});

test('channels exchanged, time reversed, polarity turned: the land is mirrored in time', () => {
  const left: Displacement = (at) => 1e-5 * Math.sin(40 * at + at * at) + 6e-6 * Math.cos(211 * at);
  const right: Displacement = (at) => 1e-5 * Math.cos(57 * at) - 5e-6 * Math.sin(90 * at * at);
  const settings = settingsWith({ ...EXACT, basePitch: PITCH });
  const landOf = (one: Displacement, other: Displacement) => {
    const motion = motionOf({ turns: 2, turnSeconds: T, left: one, right: other });
    const side = plannedSide(motion, settings);
    const { land } = verify(side, planSide(side, 'fixed', 0));
    return land.subarray(side.lead, side.lead + motion.quarterCount);
  };
  const end = 2 * T;
  const straight = landOf(left, right);
  const mirrored = landOf(
    (at) => -right(end - at),
    (at) => -left(end - at),
  );
  expect(mirrored.toReversed()).toBeWithin(straight, 1e-9);
  expect(Math.max(...straight) - Math.min(...straight)).toBeGreaterThan(1e-6);
});
