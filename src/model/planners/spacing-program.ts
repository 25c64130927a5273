import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../../analysis/motion.js';
import type { LinearProgram } from '../linear/linear-program.js';
import type { PlannedSide } from '../planned-side.js';
import { type BindingNeeds, bindingNeeds } from './binding-needs.js';
import { type PitchLimits, pitchLimits } from './pitch-limits.js';

/** What a quarter of the program costs more than a silent one: it decides among equal sums only. */
const TIE_BREAK = 1e-4;

/**
 * The program whose solution is the tightest pitch, per planned quarter, in units of the profile's
 * base pitch: least Σp, base ≤ p ≤ pitchMax, the slews, and A(t′) ≥ need at the bins' boundaries.
 * A at a share s of quarter j is ((1 − s)·p[j − 4] + p[j − 3] + p[j − 2] + p[j − 1] + s·p[j])/4.
 * Among equal sums the one with the least inside the program.
 * @param needs A that is needed at each boundary of a bin, m; see boundary-needs.ts
 * @param limitsOf all limits, or only those that are likely to be met; see `likelyLimits`
 */
export function spacingProgram(
  side: PlannedSide,
  needs: Float64Array,
  limitsOf: (side: PlannedSide, binding: BindingNeeds) => PitchLimits = pitchLimits,
): LinearProgram {
  const { count, lead, programCount, settings } = side;
  const binding = bindingNeeds(needs, side.basePitch);
  const limits = limitsOf(side, binding);
  const advances = binding.boundaries.length;
  const rowCount = advances + limits.slews.length;
  const most = new Float64Array(rowCount).fill(Number.POSITIVE_INFINITY);
  const need = new Float64Array(rowCount);
  most.set(limits.most, advances);
  need.set(limits.least, advances);
  const program = {
    cost: new Float64Array(count).fill(1).fill(1 + TIE_BREAK, lead, lead + programCount),
    lower: side.basePitch.map((least) => least / settings.basePitch),
    upper: limits.upper,
    need,
    most,
    starts: new Int32Array(rowCount + 1),
    columns: new Int32Array((QUARTERS_PER_TURN + 1) * advances + 2 * limits.slews.length),
    values: new Float64Array((QUARTERS_PER_TURN + 1) * advances + 2 * limits.slews.length),
  };
  addAdvances(program, binding.boundaries, needs, settings.basePitch);
  addSlews(program, advances, limits.slews);
  const entries = program.starts[rowCount]!;
  return {
    ...program,
    columns: program.columns.subarray(0, entries),
    values: program.values.subarray(0, entries),
  };
}

/** A row for each of some boundaries: four times the advance there is at least its need. */
function addAdvances(
  { need, starts, columns, values, cost }: LinearProgram,
  boundaries: readonly number[],
  needs: Float64Array,
  unit: number,
): void {
  let entry = 0;
  for (let row = 0; row < boundaries.length; row++) {
    const boundary = boundaries[row]!;
    const quarter = Math.min(Math.floor(boundary / BINS_PER_QUARTER), cost.length - 1);
    const share = boundary / BINS_PER_QUARTER - quarter;
    need[row] = (QUARTERS_PER_TURN * needs[boundary]!) / unit;
    for (let back = QUARTERS_PER_TURN; back >= 0; back--) {
      const weight = back === QUARTERS_PER_TURN ? 1 - share : back === 0 ? share : 1;
      if (weight === 0) continue;
      columns[entry] = quarter - back;
      values[entry] = weight;
      entry += 1;
    }
    starts[row + 1] = entry;
  }
}

/** A row for each of some quarters, from `first` on: what the next one holds more. */
function addSlews(
  { starts, columns, values }: LinearProgram,
  first: number,
  quarters: readonly number[],
): void {
  let entry = starts[first]!;
  for (let at = 0; at < quarters.length; at++) {
    columns[entry] = quarters[at]!;
    values[entry] = -1;
    columns[entry + 1] = quarters[at]! + 1;
    values[entry + 1] = 1;
    entry += 2;
    starts[first + at + 1] = entry;
  }
}
