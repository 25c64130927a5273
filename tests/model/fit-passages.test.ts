import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withoutQuarters } from '../../src/model/fit-mask.js';
import { openedPitch } from '../../src/model/fit-open-pitch.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { verify } from '../../src/model/verify.js';
import { swayingMotion } from '../support/loud-passages.js';
import { EXACT, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

describe('a motion without some quarters', () => {
  const spans = [
    { first: -2, end: 1 },
    { first: 3, end: 5 },
  ];
  const isOut = (quarter: number) => quarter < 1 || quarter === 3 || quarter === 4;

  test('is still in them, and as it was everywhere else', () => {
    fc.assert(
      fc.property(randomMotion({ longestTurns: 2 }), (motion) => {
        const masked = withoutQuarters(motion, spans);
        for (const name of ['approach', 'approachLoose', 'lift', 'sink'] as const) {
          const expected = motion[name].map((value, bin) =>
            isOut(Math.floor(bin / 16)) ? 0 : value,
          );
          expect(masked[name]).toEqual(expected);
        }
        const peaks = ['velocityPeak', 'accelerationPeak'] as const;
        for (const name of [...peaks, 'velocityMeanSquare', 'accelerationMeanSquare'] as const) {
          for (const wall of ['left', 'right'] as const) {
            const expected = motion[wall][name].map((value, at) => (isOut(at) ? 0 : value));
            expect(masked[wall][name]).toEqual(expected);
          }
        }
        expect(masked.left.accelerationHistogram).toBe(motion.left.accelerationHistogram);
        expect(masked.lowBand).toBe(motion.lowBand);
      }),
      { numRuns: 10 },
    );
  });

  test('is heard whole by the automation: it opens as far, and is ready for what comes next', () => {
    const level = fc.double({ min: -6, max: 6, noNaN: true });
    fc.assert(
      fc.property(randomMotion({ longestTurns: 6 }), level, (motion, levelDb) => {
        // One width throughout: what the masked quarters need of it does not come into the pitch.
        const settings = settingsWith({ baseWidth: 400e-6, depthMax: 1 });
        const [whole, masked] = [motion, withoutQuarters(motion, spans)].map((each) =>
          planSide(plannedSide(each, settings), 'machine', levelDb),
        );
        expect(masked?.halfWidth).toEqual(whole?.halfWidth);
        expect(masked?.pitch).toEqual(whole?.pitch);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the pitch to which a passage is opened', () => {
  const settings = settingsWith({ ...EXACT, executes: 'fixed', basePitch: 80e-6 });
  const loud = { from: 18, until: 19.8, outward: 50e-6 };
  const side = plannedSide(swayingMotion(30, 10e-6, [loud]), settings);
  const plan = planSide(side, 'fixed', 0);

  test('is the groove, its swing and the land that is wanted', () => {
    const pitch = openedPitch(side, plan, { fromSeconds: 18, untilSeconds: 19.8 }, 5e-6);
    expect(pitch).toBeWithin(50.8e-6 + 50e-6 + 5e-6, 5.1e-9);
    expect(pitch).toBeGreaterThanOrEqual(105.8e-6);
  });

  test('held over the turn before leaves that land', () => {
    const pitch = openedPitch(side, plan, { fromSeconds: 18, untilSeconds: 19.8 }, 5e-6)!;
    const basePitch = [
      { fromSeconds: 16.2, pitch },
      { fromSeconds: 19.8, pitch: settings.basePitch },
    ];
    const opened = plannedSide(side.motion, settings, { ...NOTHING_BY_HAND, basePitch });
    const { land } = verify(opened, planSide(opened, 'fixed', 0));
    expect(Math.min(...land.subarray(44, 48))).toBeGreaterThanOrEqual(5e-6);
  });

  test('is none where enough is left, nor for a quarter that only touches the passage', () => {
    expect(openedPitch(side, plan, { fromSeconds: 0, untilSeconds: 18 }, 5e-6)).toBeNull();
    expect(openedPitch(side, plan, { fromSeconds: 19.8, untilSeconds: 30 }, 5e-6)).toBeNull();
    expect(openedPitch(side, plan, { fromSeconds: 19.7, untilSeconds: 30 }, 5e-6)).not.toBeNull();
    expect(openedPitch(side, plan, { fromSeconds: 0, untilSeconds: 18.1 }, 5e-6)).not.toBeNull();
    // Land of 19.2 µm in the quiet is enough for 19, not for 20.
    expect(openedPitch(side, plan, { fromSeconds: 0, untilSeconds: 9 }, 19e-6)).toBeNull();
    const wider = openedPitch(side, plan, { fromSeconds: 0, untilSeconds: 9 }, 20e-6);
    expect(wider).toBeWithin(80.8e-6, 5.1e-9);
  });

  test('leaves out the first silent turn, which faces the lead-in', () => {
    const before = { fromSeconds: -1.8, untilSeconds: 0 };
    expect(openedPitch(side, plan, before, 50e-6)).toBeNull();
  });
});
