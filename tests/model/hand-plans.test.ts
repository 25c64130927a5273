import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turnAdvance } from '../../src/model/disc.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { type Plan, planSide } from '../../src/model/plan.js';
import { radiusUsed } from '../../src/model/plan-report.js';
import { type PlannedSide, plannedSide } from '../../src/model/planned-side.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { verify } from '../../src/model/verify.js';
import { PLANNERS, type Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { randomHand } from '../support/random-hand.js';
import { randomMotion } from '../support/random-motion.js';

const RUNS = { numRuns: 60 };
const ROUNDING = 1e-15;
/** The solver keeps a bound to 1e-7 of the base pitch, and an advance is made of four pitches. */
const KEPT = 1e-10;
const UNBOUND: Partial<Settings> = { pitchMax: 1, depthMax: 1 };

const level = fc.double({ min: -12, max: 12, noNaN: true });
const limits = fc.record({
  timingTolerance: fc.integer({ min: 0, max: 3 }),
  silentTurns: fc.integer({ min: 1, max: 2 }),
  pitchOpenSlew: fc.double({ min: 2e-6, max: 2e-4, noNaN: true }),
  pitchCloseSlew: fc.double({ min: 2e-6, max: 2e-4, noNaN: true }),
});

function sum({ pitch }: Plan): number {
  return pitch.reduce((total, each) => total + each, 0);
}

/** The plan as it is cut when the pitch comes `quarters` late; base pitch before it. */
function executedLate(side: PlannedSide, plan: Plan, quarters: number): Plan {
  const before = side.basePitch[0]!;
  const pitch = plan.pitch.map((_, at) => plan.pitch[at - quarters] ?? before);
  return { ...plan, pitch, advance: turnAdvance(pitch, before) };
}

/**
 * What A − h − h changes in the bin where it changes most: land is told for the worse end of a bin,
 * wherever its peak lies, and the tightest plan is made for both ends.
 */
function insideBin(side: PlannedSide, { advance, facing }: Plan): number {
  let most = 0;
  for (let quarter = 0; quarter < side.count; quarter++) {
    const advanced = advance[quarter + 1]! - advance[quarter]!;
    const widened = facing[quarter + 1]! - facing[quarter]!;
    most = Math.max(most, (Math.abs(advanced) + Math.abs(widened)) / 16);
  }
  return most;
}

describe('base pitch and base width that are set by hand', () => {
  test('from the first sample on are those of the profile', () => {
    fc.assert(
      fc.property(randomMotion(), level, (motion, levelDb) => {
        const hand = {
          ...NOTHING_BY_HAND,
          basePitch: [{ fromSeconds: 0, pitch: 95e-6 }],
          baseWidth: [{ fromSeconds: 0, width: 61e-6 }],
        };
        const byHand = plannedSide(motion, settingsWith(), hand);
        const settings = settingsWith({ basePitch: 95e-6, baseWidth: 61e-6 });
        const byProfile = plannedSide(motion, settings);
        for (const planner of PLANNERS) {
          const [one, other] = [byHand, byProfile].map((side) => planSide(side, planner, levelDb));
          // The solver's units are the profile's base pitch.
          const exact = planner === 'tightest' ? KEPT : 0;
          expect(one!.halfWidth).toEqual(other!.halfWidth);
          expect(one!.facing).toEqual(other!.facing);
          if (planner === 'tightest') expect(sum(one!)).toBeWithin(sum(other!), KEPT, 1e-6);
          else expect(one!.pitch).toBeWithin(other!.pitch, exact);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('are never gone under, and no plan is faster than its slews', () => {
    fc.assert(
      fc.property(randomMotion(), randomHand, level, limits, (motion, hand, levelDb, changes) => {
        const settings = settingsWith({ ...UNBOUND, ...changes });
        const side = plannedSide(motion, settings, hand);
        for (const planner of PLANNERS) {
          const { pitch, halfWidth } = planSide(side, planner, levelDb);
          for (const [quarter, here] of pitch.entries()) {
            const opened = here - (pitch[quarter - 1] ?? here);
            expect(here).toBeGreaterThanOrEqual(side.basePitch[quarter]!);
            expect(opened).toBeLessThanOrEqual(settings.pitchOpenSlew + KEPT);
            expect(-opened).toBeLessThanOrEqual(settings.pitchCloseSlew + KEPT);
            const narrowest = Math.min(halfWidth[quarter]!, halfWidth[quarter + 1]!);
            expect(narrowest).toBeGreaterThanOrEqual(side.baseHalfWidth[quarter]!);
            const wider = halfWidth[quarter + 1]! - halfWidth[quarter]!;
            expect(wider).toBeLessThanOrEqual(settings.depthOpenSlew + ROUNDING);
            expect(-wider).toBeLessThanOrEqual(settings.depthCloseSlew + ROUNDING);
          }
        }
      }),
      { numRuns: 30 },
    );
  });

  test.each(['turn-ahead', 'tightest'] as const)(
    'leave %s its land, c quarters early and late as well',
    (planner) => {
      fc.assert(
        fc.property(randomMotion(), randomHand, level, limits, (motion, hand, levelDb, changes) => {
          const settings = settingsWith({ ...UNBOUND, ...changes });
          const side = plannedSide(motion, settings, hand);
          const plan = planSide(side, planner, levelDb);
          const margin = planner === 'tightest' ? KEPT + insideBin(side, plan) : ROUNDING;
          const c = settings.timingTolerance;
          for (const late of [-c, 0, c]) {
            const { land } = verify(side, executedLate(side, plan, late));
            const kept = land.subarray(4 + Math.max(0, late), side.count + Math.min(0, late));
            for (const left of kept) expect(left).toBeGreaterThanOrEqual(settings.landMin - margin);
          }
        }),
        RUNS,
      );
    },
  );

  test('leave the planners in their order: tightest, turn-ahead, and at c = 0 the machine', () => {
    fc.assert(
      fc.property(randomMotion(), randomHand, level, limits, (motion, hand, levelDb, changes) => {
        const settings = settingsWith({ ...UNBOUND, ...changes, echoLand: 0 });
        const side = plannedSide(motion, settings, hand);
        const ahead = sum(planSide(side, 'turn-ahead', levelDb));
        expect(sum(planSide(side, 'tightest', levelDb))).toBeLessThanOrEqual(ahead + KEPT);
        if (settings.timingTolerance > 0) return;
        expect(ahead).toBeLessThanOrEqual(sum(planSide(side, 'machine', levelDb)) + ROUNDING);
      }),
      RUNS,
    );
  });

  test('of a silent side: opens early, closes late, by its slew', () => {
    const settings = settingsWith({
      basePitch: 80e-6,
      pitchOpenSlew: 20e-6,
      pitchCloseSlew: 10e-6,
    });
    const basePitch = [
      { fromSeconds: 1.8, pitch: 130e-6 },
      { fromSeconds: 2.7, pitch: 100e-6 },
    ];
    const hand = { ...NOTHING_BY_HAND, basePitch };
    const side = plannedSide(emptyMotion(3.6), settings, hand);
    const expected = [80, 80, 80, 80, 80, 80, 90, 110, 130, 130, 120, 110, 100, 100, 100, 100];
    for (const planner of PLANNERS) {
      expect(planSide(side, planner, 0).pitch).toBeWithin(
        expected.map((pitchUm) => pitchUm * 1e-6),
        KEPT,
      );
    }
  });

  test('of a silent side leave no place that is told, however they change', () => {
    fc.assert(
      fc.property(randomHand, fc.constantFrom(...PLANNERS), (hand, planner) => {
        // 31 to 51 µm wide, what widthMin and its tolerance ask for, at 60 µm or more: land enough.
        const settings = settingsWith({ landMin: 0, executes: 'plan', echoLand: 0 });
        const narrowed = (width: number) => 31e-6 + (width - 40e-6) / 2.5;
        const baseWidth = hand.baseWidth.map(({ fromSeconds, width }) => ({
          fromSeconds,
          width: narrowed(width),
        }));
        const { hotSpots, findings } = forecastSide(emptyMotion(9), settings, {
          levelDb: 0,
          planner,
          source: SOUND_SOURCE,
          hand: { ...hand, baseWidth },
        });
        expect(hotSpots).toEqual([]);
        expect(findings.filter(({ id }) => id !== 'silent')).toEqual([]);
      }),
      RUNS,
    );
  });
});

describe('marker bands', () => {
  const band = { fromSeconds: 4, untilSeconds: 5, pitch: 1.5e-3 };

  test('take their own pitch times their turns, and nothing else', () => {
    const settings = settingsWith({ ...EXACT, basePitch: 80e-6 });
    const side = plannedSide(emptyMotion(20), settings, {
      ...NOTHING_BY_HAND,
      bands: [band],
    });
    // (19·80 µm + 1·1.5 mm)/1.8: twenty seconds, one of them a band.
    const used = radiusUsed(side, planSide(side, 'machine', 0));
    expect(used).toBeWithin((19 * 80e-6 + 1.5e-3) / 1.8, 1e-15);
  });

  test('leave land and advance as they are: nobody relies on a band made by hand', () => {
    fc.assert(
      fc.property(randomMotion(), randomHand, level, (motion, hand, levelDb) => {
        const bare = plannedSide(motion, settingsWith(), hand);
        const side = plannedSide(motion, settingsWith(), { ...hand, bands: [band] });
        for (const planner of PLANNERS) {
          const [without, plan] = [bare, side].map((each) => planSide(each, planner, levelDb));
          expect(plan!.pitch).toEqual(without!.pitch);
          expect(verify(side, plan!).land).toEqual(verify(bare, without!).land);
          const lasts = Math.max(0, Math.min(5, motion.durationSeconds) - 4);
          if (lasts === 0) expect(radiusUsed(side, plan!)).toBe(radiusUsed(bare, without!));
          else expect(radiusUsed(side, plan!)).toBeGreaterThan(radiusUsed(bare, without!));
        }
      }),
      { numRuns: 20 },
    );
  });

  test('that are tighter than the plan do not close it', () => {
    const tight = { ...NOTHING_BY_HAND, bands: [{ ...band, pitch: 50e-6 }] };
    const side = plannedSide(emptyMotion(9), settingsWith(), tight);
    const { cut, pitch } = planSide(side, 'turn-ahead', 0);
    expect(cut).toEqual(pitch);
  });

  test('move the groove inward, where it is slower, after them only', () => {
    const [motion] = fc.sample(randomMotion({ longestTurns: 5 }), { numRuns: 1, seed: 4 });
    const at = motion!.durationSeconds / 2;
    const bands = [{ fromSeconds: at, untilSeconds: at + 0.45, pitch: 1.5e-3 }];
    const radii = [[], bands].map((each) => {
      const side = plannedSide(motion!, settingsWith(), { ...NOTHING_BY_HAND, bands: each });
      return { side, radius: planSide(side, 'machine', 0).radius };
    });
    const [before, after] = radii;
    const first = Math.floor(at / before!.side.quarterSeconds) + before!.side.lead;
    const moved = before!.radius.map((radius, node) => radius - after!.radius[node]!);
    expect(moved.subarray(0, first + 1)).toBeWithin(new Float64Array(first + 1), 0);
    const taken = moved.subarray(first + 3);
    expect(Math.min(...taken)).toBeWithin(Math.max(...taken), 1e-12);
    expect(Math.min(...taken)).toBeGreaterThan(0.3e-3);
  });
});
