import fc from 'fast-check';
import { expect, test } from 'vitest';
import { emptyPlanRows, planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { emptyTrialRows, traceLimit } from '../../src/model/trace-limit.js';
import { verify } from '../../src/model/verify.js';
import { bendShares, facetShares } from '../../src/model/worst-second.js';
import type { Planner } from '../../src/settings.js';
import { settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const level = fc.double({ min: -12, max: 12, noNaN: true });
const planner = fc.constantFrom<Planner>('machine', 'turn-ahead', 'fixed', 'tightest');

test('a level is planned, verified and judged alike whatever level had the rows before', () => {
  fc.assert(
    fc.property(
      randomMotion({ longestTurns: 3 }),
      fc.tuple(planner, level),
      fc.tuple(planner, level),
      (motion, before, wanted) => {
        const side = plannedSide(motion, settingsWith());
        const rows = { plan: emptyPlanRows(side), ...emptyTrialRows(side) };
        const told = ([by, levelDb]: readonly [Planner, number], used: Partial<typeof rows>) => {
          const plan = planSide(side, by, levelDb, used.plan);
          const facet = facetShares(side, plan, 0.5, used.shares);
          const facets = { ...facet, shares: [...facet.shares], own: [...facet.own] };
          const bend = bendShares(side, plan, side.settings.lineTip, used.shares);
          const bends = { ...bend, shares: [...bend.shares], own: [...bend.own] };
          const limit = traceLimit(side, plan, { ...emptyTrialRows(side), ...used });
          return { verified: verify(side, plan, used.verified), facets, bends, limit };
        };
        told(before, rows);
        const again = told(wanted, rows);
        expect(again.verified.plan.pitch).toBe(rows.plan.pitch);
        expect(again.verified.land).toBe(rows.verified.land);
        expect(again).toEqual(told(wanted, {}));
      },
    ),
    { numRuns: 30 },
  );
});
