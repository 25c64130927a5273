import type { Finding } from '../forecast-types.js';
import type { Plan } from '../plan.js';
import { spareRadius } from '../plan-report.js';
import type { PlannedSide } from '../planned-side.js';
import { quarterStart } from '../planned-side.js';
import { finding } from './finding.js';

/**
 * `too-long`: a fault where the program ends inside the inner diameter, a caution where it only
 * passes the diameter that the house prefers. It is where the spiral passes the limit.
 */
export function lengthFindings(side: PlannedSide, plan: Plan): Finding[] {
  const { innerDiameter, preferredEndDiameter } = side.settings;
  const spare = spareRadius(side, plan);
  const endDiameter = innerDiameter + 2 * spare;
  if (spare < 0) return [tooLong(side, plan, endDiameter, innerDiameter, 'fault')];
  if (preferredEndDiameter === null || endDiameter >= preferredEndDiameter) return [];
  return [tooLong(side, plan, endDiameter, preferredEndDiameter, 'caution')];
}

function tooLong(
  side: PlannedSide,
  { radius }: Plan,
  endDiameter: number,
  limit: number,
  severity: 'fault' | 'caution',
): Finding {
  const passed = radius.findIndex((at) => 2 * at <= limit);
  const before = radius[passed - 1]!;
  const share = (before - limit / 2) / (before - radius[passed]!);
  const atSeconds = quarterStart(side, passed - 1 + share);
  return finding('too-long', severity, { atSeconds, value: endDiameter, limit, unit: 'metre' });
}
