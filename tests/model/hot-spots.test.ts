import { describe, expect, test } from 'vitest';
import { forecastSide } from '../../src/model/forecast-model.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { motionOf } from '../support/motion-of.js';

const T = 1.8;
const BIN = T / 64;
const FIXED = { ...EXACT, executes: 'fixed' } as const;

function spotsOf(motion: ReturnType<typeof emptyMotion>, changes = {}) {
  const settings = settingsWith({ ...FIXED, basePitch: 150e-6, ...changes });
  return forecastSide(motion, settings, {
    levelDb: 0,
    planner: 'turn-ahead',
    source: SOUND_SOURCE,
  }).hotSpots;
}

/** Land taken at bins of a program of ten turns, m. */
function withApproach(...taken: (readonly [bin: number, approach: number])[]) {
  const motion = emptyMotion(10 * T);
  for (const [bin, approach] of taken) {
    motion.approach[bin] = approach;
    motion.approachLoose[bin] = approach;
  }
  return motion;
}

describe('hot spots', () => {
  test('are the least lands, the worst first, where they are', () => {
    const spots = spotsOf(withApproach([100, 60e-6], [300, 90e-6], [500, 30e-6]));
    expect(spots.map(({ atSeconds }) => atSeconds)).toBeWithin(
      [300 * BIN, 100 * BIN, 500 * BIN],
      1e-9,
    );
    expect(spots.map(({ land }) => land)).toBeWithin([9.2e-6, 39.2e-6, 69.2e-6], 1e-12);
    expect(spots[0]?.turn).toBeWithin(300 / 64, 1e-9);
    expect(spots[0]?.radius).toBeWithin(0.14605 - (150e-6 * 300) / 64, 1e-12);
  });

  test('are a turn apart: 63 bins are too near, 64 are not', () => {
    const near = spotsOf(withApproach([200, 60e-6], [263, 50e-6]));
    expect(near).toHaveLength(1);
    expect(spotsOf(withApproach([200, 60e-6], [264, 50e-6]))).toHaveLength(2);
  });

  test('are five at most, and none in silence', () => {
    const many = [1, 2, 3, 4, 5, 6, 7].map((turn) => [turn * 70, turn * 1e-6] as const);
    expect(spotsOf(withApproach(...many))).toHaveLength(5);
    expect(spotsOf(emptyMotion(10 * T))).toEqual([]);
  });

  test('tell how deep an overcut goes and whether a tip would meet it', () => {
    // Half-width 25.4 µm; an 18 µm sphere touches 12.67 µm down: land of −25.3 µm reaches it.
    const contact = 25.4e-6 - 18e-6 / Math.SQRT2;
    const open = 150e-6 - 50.8e-6;
    const [deep, shallow, clear] = spotsOf(
      withApproach(
        [100, open + 2 * contact + 0.1e-6],
        [300, open + 2 * contact - 0.1e-6],
        [500, open - 1e-6],
      ),
    );
    expect(deep).toMatchObject({ reachesContact: true });
    expect(shallow).toMatchObject({ reachesContact: false });
    expect(shallow?.overcutDepth).toBeWithin(contact - 0.05e-6, 1e-12);
    expect(clear).toMatchObject({ reachesContact: false, overcutDepth: 0 });
  });
});

test('a tip meets an overcut in the narrower groove, also where that is the turn outside', () => {
  // Lifted by 10 µm a turn ago: a sphere touches 2.67 µm down there, 12.67 µm down here.
  const motion = withApproach([300, 150e-6 - 50.8e-6 + 8e-6]);
  expect(spotsOf(motion)[0]).toMatchObject({ reachesContact: false });
  motion.lift[300 - 64] = 10e-6;
  expect(spotsOf(motion)[0]).toMatchObject({ reachesContact: true });
});

test('inside the finishing groove nothing is cut, so no land is told there', () => {
  // Ten turns of 150 µm take 1.5 mm of radius; the finishing groove lies 0.9 mm in.
  const motion = withApproach([200, 50e-6], [500, 90e-6]);
  expect(spotsOf(motion)).toHaveLength(2);
  const finishingDiameter = 0.2921 - 2 * 0.9e-3;
  const inside = spotsOf(motion, { finishingDiameter });
  expect(inside.map(({ atSeconds }) => atSeconds)).toBeWithin([200 * BIN], 1e-9);
});

describe('the cause', () => {
  const low = (at: number) => 25e-6 * Math.sin(2 * Math.PI * (50 + 5 / 18) * at);
  const high = (at: number) => 10e-6 * Math.sin(2 * Math.PI * (5000 + 5 / 18) * at);
  const still = () => 0;
  const minus = (u: (at: number) => number) => (at: number) => -u(at);

  test.each([
    ['lateral-low', 'both', low, low],
    ['lateral-high', 'both', high, high],
    ['one-wall', 'left', low, still],
    ['one-wall', 'right', still, low],
  ] as const)('%s by %s', (cause, wall, left, right) => {
    const motion = motionOf({ turns: 3, turnSeconds: T, left, right });
    if (left !== high) {
      motion.lowBand.lateralAmplitude.fill(25e-6);
      motion.lowBand.strongestFrequency.fill(50);
    }
    // The first and last turns face silence: there one wall alone takes the land.
    const spot = spotsOf(motion).find(({ atSeconds }) => atSeconds >= T && atSeconds < 3 * T);
    expect(spot).toMatchObject({ cause, wall });
    expect(spot?.frequency).toBeWithin(left === high ? 5000 : 50, 5);
  });

  test('is the wall that moved: the outer one now, the inner one a turn earlier', () => {
    for (const [wall, row, bin] of [
      ['right', 'outward', 200],
      ['left', 'inward', 200 - 64],
    ] as const) {
      const motion = withApproach([200, 60e-6]);
      motion[row][bin] = 60e-6;
      // What moves at the other places faces a turn that is not this one.
      motion.inward[200] = 60e-6;
      expect(spotsOf(motion)[0]).toMatchObject({ wall });
    }
  });

  test('vertical where the walls oppose each other, width where the groove has opened for it', () => {
    const left = (at: number) => 25e-6 * Math.sin(2 * Math.PI * 50 * at);
    const motion = motionOf({ turns: 3, turnSeconds: T, left, right: minus(left) });
    motion.lowBand.verticalAmplitude.fill(35e-6);
    expect(spotsOf(motion)[0]).toMatchObject({ cause: 'vertical' });

    const lifted = emptyMotion(3 * T);
    lifted.lift.fill(40e-6);
    const [wide] = spotsOf(lifted, { executes: 'plan' });
    expect(wide).toMatchObject({ cause: 'width', wall: 'both', frequency: null });
  });
});
