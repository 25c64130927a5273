import fc from 'fast-check';
import { expect, test } from 'vitest';
import { binLand } from '../../src/model/bin-land.js';
import { isTooDeep, isTooNarrow } from '../../src/model/findings/groove-findings.js';
import { isOvercut } from '../../src/model/findings/land-findings.js';
import { pitchLimitFindings } from '../../src/model/findings/pitch-limit.js';
import { leastLand } from '../../src/model/least-land.js';
import { SHARE_LIMIT } from '../../src/model/limits.js';
import { valueAt } from '../../src/model/nodes.js';
import { type Plan, planSide } from '../../src/model/plan.js';
import {
  binStart,
  type PlannedSide,
  plannedSide,
  quarterStart,
} from '../../src/model/planned-side.js';
import { traceLimit } from '../../src/model/trace-limit.js';
import { verify } from '../../src/model/verify.js';
import { bendShares, facetShares } from '../../src/model/worst-second.js';
import { settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const plans = fc
  .record({
    motion: randomMotion({ longestTurns: 8 }),
    levelDb: fc.double({ min: -12, max: 12, noNaN: true }),
    planner: fc.constantFrom('fixed', 'machine', 'turn-ahead'),
    limits: fc.record({
      depthMax: fc.constantFrom(25e-6, 40e-6, 1),
      widthMin: fc.constantFrom(1e-6, 25e-6),
      pitchMax: fc.constantFrom(86e-6, 150e-6, 1),
      pitchOpenSlew: fc.constantFrom(2e-6, 80e-6),
      silentTurns: fc.constantFrom(1, 2),
    }),
  })
  .map(({ motion, levelDb, planner, limits }) => {
    const side = plannedSide(motion, settingsWith(limits));
    return { side, plan: planSide(side, planner, levelDb) };
  });

test('the first fault is that of a plan whose every bin is looked at', () => {
  const found = new Set<string>();
  fc.assert(
    fc.property(plans, ({ side, plan }) => {
      const expected = firstFault(side, plan);
      expect(traceLimit(side, plan)).toEqual(expected);
      found.add(expected?.id ?? 'none');
    }),
    { numRuns: 300 },
  );
  for (const id of ['lift', 'too-deep', 'overcut', 'pitch-limit', 'none']) {
    expect(found).toContain(id);
  }
});

test('the least land is that of all bins, a turn apart, outside of the finishing groove', () => {
  fc.assert(
    fc.property(plans, ({ side, plan }) => {
      const places = leastLand(side, plan, 3);
      const land = binLand(side, plan);
      const innermost = side.settings.finishingDiameter / 2;
      const taken: number[] = [];
      for (const place of places) {
        let least = Number.POSITIVE_INFINITY;
        for (let bin = 4 * 16; bin < land.length; bin++) {
          const isFree = taken.every((other) => Math.abs(other - bin) >= 64);
          const isCut = valueAt(side, plan.radius, binStart(side, bin)) >= innermost;
          if (isFree && isCut) least = Math.min(least, land[bin]!);
        }
        expect(place.land).toBeWithin(least, 1e-15);
        expect(land[place.bin]!).toBeWithin(least, 1e-15);
        taken.push(place.bin);
      }
    }),
    { numRuns: 100 },
  );
});

function firstFault(side: PlannedSide, plan: Plan): ReturnType<typeof traceLimit> {
  const verified = verify(side, plan);
  const { land, landBin, widthMin, widthMinBin, widthMax } = verified;
  for (let quarter = 0; quarter < side.count; quarter++) {
    if (isTooNarrow(side, widthMin[quarter]!)) {
      return { id: 'lift', atSeconds: binStart(side, widthMinBin[quarter]!) };
    }
    if (isTooDeep(side, widthMax[quarter]!)) {
      return { id: 'too-deep', atSeconds: quarterStart(side, quarter) };
    }
    if (quarter >= 4 && isOvercut(land[quarter]!)) {
      return { id: 'overcut', atSeconds: binStart(side, landBin[quarter]!) };
    }
  }
  const [limit] = pitchLimitFindings(side, verified);
  if (limit !== undefined) return { id: limit.id, atSeconds: limit.atSeconds };
  const { facetFault, lineTip } = side.settings;
  for (const [id, { shares }] of [
    ['facet', facetShares(side, plan, facetFault)],
    ['tight-bend', bendShares(side, plan, lineTip)],
  ] as const) {
    const window = shares.findIndex((share) => share > SHARE_LIMIT);
    if (window >= 0) return { id, atSeconds: quarterStart(side, side.lead + window) };
  }
  return null;
}
