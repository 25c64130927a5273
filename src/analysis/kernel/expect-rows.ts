import { BINS_PER_QUARTER } from '../motion.js';
import type { MotionRows } from '../part-motion.js';
import type { Part } from '../parts.js';

/**
 * Makes sure that rows are as long as a part: the end of a shorter row would be waited for for ever.
 * @throws Error that says what was expected
 */
export function expectRows({ bins, left, right, lowBand }: MotionRows, part: Part): void {
  const quarters = part.endQuarter - part.firstQuarter;
  expectLength('bins', bins.lift, quarters * BINS_PER_QUARTER);
  expectLength('quarters of the left wall', left.velocityPeak, quarters);
  expectLength('quarters of the right wall', right.velocityPeak, quarters);
  expectLength('quarters of the low band', lowBand.lateralAmplitude, quarters);
}

function expectLength(what: string, { length }: Float64Array, expected: number): void {
  if (length !== expected) throw new Error(`a part of ${expected} ${what} has rows for ${length}`);
}
