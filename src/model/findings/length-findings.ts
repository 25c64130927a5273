import { BASE_PITCH, LEAD_OUT_ROOM } from '../finding-details.js';
import type { Finding } from '../forecast-types.js';
import { LENGTH_MARGIN } from '../limits.js';
import type { Plan } from '../plan.js';
import { radiusUsed, spareRadius } from '../plan-report.js';
import type { PlannedSide } from '../planned-side.js';
import { quarterStart } from '../planned-side.js';
import { standardDimension } from '../standard-dimensions.js';
import { finding } from './finding.js';

/**
 * `too-long`: a fault where the program ends inside the inner diameter, a caution where it only
 * passes the diameter that the house prefers. It is where the spiral passes the limit; detail
 * `base-pitch` says that it would do so unmodulated. Of a side that fits also where it leaves too
 * little for the lead-out.
 */
export function lengthFindings(side: PlannedSide, plan: Plan): Finding[] {
  const { innerDiameter, preferredEndDiameter } = side.settings;
  const spare = spareRadius(side, plan);
  const endDiameter = innerDiameter + 2 * spare;
  if (spare < 0) return [tooLong(side, plan, endDiameter, innerDiameter, 'fault')];
  const leadOut = leadOutFindings(side, plan);
  if (preferredEndDiameter === null || endDiameter >= preferredEndDiameter) return leadOut;
  return [tooLong(side, plan, endDiameter, preferredEndDiameter, 'caution'), ...leadOut];
}

/**
 * Less than one turn of lead-out at leadOutPitch between the last silent turn and the finishing
 * groove: `too-long`, a caution; where a turn at the least standard pitch would still fit,
 * `off-standard`, a note. Value and limit are the diameter at which the silence ends.
 * Source: IEC 98:1987, 8.8, at least one turn, from a secondary text.
 */
function leadOutFindings({ settings, motion, count }: PlannedSide, { radius }: Plan): Finding[] {
  const { finishingDiameter, leadOutPitch, disc } = settings;
  const value = 2 * radius[count]!;
  const room = (value - finishingDiameter) / 2;
  if (room >= leadOutPitch - LENGTH_MARGIN) return [];
  const { least } = standardDimension('lead-out', disc);
  const known = {
    atSeconds: motion.durationSeconds,
    value,
    limit: finishingDiameter + 2 * leadOutPitch,
    unit: 'metre',
    detail: LEAD_OUT_ROOM,
  } as const;
  return room >= least - LENGTH_MARGIN
    ? [finding('off-standard', 'note', known)]
    : [finding('too-long', 'caution', known)];
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
  const unmodulated = side.settings.startDiameter - 2 * radiusUsed(side, { pitch: side.basePitch });
  const detail = unmodulated < limit ? BASE_PITCH : null;
  return finding('too-long', severity, {
    atSeconds,
    value: endDiameter,
    limit,
    unit: 'metre',
    detail,
  });
}
