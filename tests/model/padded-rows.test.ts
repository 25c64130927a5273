import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  BINS_PER_QUARTER,
  type MotionSummary,
  QUARTERS_PER_TURN,
} from '../../src/analysis/motion.js';
import { plannedRows } from '../../src/model/planned-rows.js';
import { settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const PADDED = ['approach', 'approachLoose', 'lift', 'sink'] as const;

/** The same motion, its bin rows with silent quarters around them in one memory. */
function inSilence(motion: MotionSummary, quarters: number): MotionSummary {
  const moved = (row: Float64Array) => {
    const silent = quarters * BINS_PER_QUARTER;
    const around = new Float64Array(row.length + 2 * silent);
    around.set(row, silent);
    return around.subarray(silent, silent + row.length);
  };
  const { approach, approachLoose, lift, sink } = motion;
  return {
    ...motion,
    approach: moved(approach),
    approachLoose: moved(approachLoose),
    lift: moved(lift),
    sink: moved(sink),
  };
}

test('rows that lie in silence are planned where they lie, with the values of copied ones', () => {
  const turns = fc.integer({ min: 1, max: 3 });
  fc.assert(
    fc.property(randomMotion({ longestTurns: 3 }), turns, turns, (motion, silentTurns, around) => {
      const settings = settingsWith({ silentTurns });
      const quarters = QUARTERS_PER_TURN * around;
      const silent = inSilence(motion, quarters);
      const [copied, planned] = [
        plannedRows(motion, settings),
        plannedRows(silent, settings, undefined, quarters),
      ];
      for (const name of PADDED) {
        expect(planned[name]).toEqual(copied[name]);
        // Too little silence around them is not enough.
        expect(planned[name].buffer === silent[name].buffer).toBe(around >= silentTurns);
      }
    }),
    { numRuns: 30 },
  );
});
