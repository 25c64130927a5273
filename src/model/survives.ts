import type { EdgeWindow } from '../analysis/motion.js';
import type { Seconds } from '../units.js';
import type { Survives } from './forecast-types.js';
import { quartersIn, valueAt } from './nodes.js';
import { nominalLand } from './nominal-land.js';
import type { Plan } from './plan.js';
import { binStart, type PlannedSide } from './planned-side.js';

/** The longest delay that is told, turns. */
const LONGEST_TURNS = 2;

/**
 * How far off the lathe may be at a bin until its land, all else as planned, reaches zero.
 * - speed: least |δ|/T for which the inner edge δ earlier or later than a turn ago meets the outer
 *   one; null without a window, or if none of its edges do.
 * - depth: landNominal/2, as an error of the half-width widens both turns.
 * - delay: how late the pitch may come, the depth in time; null if even base pitch would do, or if
 *   it is more than two turns: no automation is so late, and it holds for all that matters.
 * An overcut survives 0.
 * @param window the edges around the bin; null: not looked at
 */
export function survives(
  side: PlannedSide,
  plan: Plan,
  bin: number,
  window: EdgeWindow | null,
): Survives {
  return {
    speed: window === null ? null : survivedSpeed(side, plan, window),
    depth: Math.max(0, nominalLand(side, plan, bin) / 2),
    delay: survivedDelay(side, plan, bin),
  };
}

function survivedSpeed(side: PlannedSide, plan: Plan, window: EdgeWindow): number | null {
  const { rate, startSeconds, outer, inner, margin } = window;
  const lowest = inner.reduce((least, edge) => Math.min(least, edge), 0);
  let least = margin + 1;
  for (let frame = 0; frame < outer.length && least > 0; frame++) {
    const at = startSeconds + frame / rate;
    const free = valueAt(side, plan.advance, at) - valueAt(side, plan.facing, at);
    // Where the inner edge lies at or under this, the two meet.
    const meets = outer[frame]! - free / plan.gain;
    // Most frames are met nowhere, which need not be looked for everywhere.
    if (lowest > meets) continue;
    for (let shift = 0; shift < least; shift++) {
      const earlier = inner[margin + frame - shift] ?? 0;
      const later = inner[margin + frame + shift] ?? 0;
      if (Math.min(earlier, later) <= meets) least = shift;
    }
  }
  return least > margin ? null : least / (rate * side.motion.turnSeconds);
}

/** The lesser of what the two ends of the bin survive: A − h − h is linear between them. */
function survivedDelay(side: PlannedSide, plan: Plan, bin: number): Seconds | null {
  const delays = [bin, bin + 1].flatMap((edge) => {
    const at = binStart(side, edge);
    // Inside a quarter both ends belong to the same straight piece of h.
    const need = valueAt(side, plan.facing, at) + plan.gain * side.approach[bin]!;
    const delay = delayUntil(side, plan.advance, at, need);
    return delay === null ? [] : [delay];
  });
  const least = Math.min(...delays, Number.POSITIVE_INFINITY);
  return least > LONGEST_TURNS * side.motion.turnSeconds ? null : least;
}

/** Least d ≥ 0 with A(t − d) ≤ need; A is linear between its nodes, base pitch before them. */
function delayUntil(
  side: PlannedSide,
  advance: Float64Array,
  at: Seconds,
  need: number,
): Seconds | null {
  let later = quartersIn(side, at);
  let laterAdvance = valueAt(side, advance, at);
  if (laterAdvance <= need) return 0;
  for (let node = Math.ceil(later) - 1; node >= 0; node--) {
    const here = advance[node]!;
    if (here <= need) {
      const share = (laterAdvance - need) / (laterAdvance - here);
      const meets = later - share * (later - node);
      return at - (meets - side.lead) * side.quarterSeconds;
    }
    later = node;
    laterAdvance = here;
  }
  return null;
}
