import type { Plan } from '../../../../../model/plan.js';
import type { PlannedSide } from '../../../../../model/planned-side.js';

/** A ring of the disc and the mean pitch of the turns in it. */
export interface PitchRing {
  readonly outer: number;
  readonly inner: number;
  readonly pitch: number;
}

/**
 * The program's turns gathered into rings from the outside in, each at least `least` wide, m: what
 * the eye sees on a disc, where loud passages stand wider apart and look lighter.
 */
export function pitchRings(
  { lead, programCount }: PlannedSide,
  plan: Plan,
  least: number,
): PitchRing[] {
  const rings: PitchRing[] = [];
  const { radius } = plan;
  let first = lead;
  for (let node = lead + 1; node <= lead + programCount; node++) {
    const outer = radius[first] ?? Number.NaN;
    const inner = Math.max(0, radius[node] ?? Number.NaN);
    const isLast = node === lead + programCount;
    if (!(outer - inner >= least) && !isLast) continue;
    if (outer > inner) rings.push({ outer, inner, pitch: (4 * (outer - inner)) / (node - first) });
    first = node;
    if (inner <= 0) break;
  }
  return rings;
}
