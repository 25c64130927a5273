import type { Planner } from '../settings.js';
import type { Metres } from '../units.js';
import { allFindings } from './findings/all-findings.js';
import type { Finding, SourceFacts } from './forecast-types.js';
import { planSide } from './plan.js';
import { spareRadius } from './plan-report.js';
import type { PlannedSide } from './planned-side.js';
import { verify } from './verify.js';

/** What one planner makes of a side at one level, as far as a decision needs it. */
export interface Judgement {
  readonly levelDb: number;
  /** End radius − inner limit; negative if the program does not fit. */
  readonly spare: Metres;
  readonly endDiameter: Metres;
  /** In the order of a forecast's findings. */
  readonly faults: readonly Finding[];
}

/** Plans, verifies and judges a side as a forecast does: the same faults, the same spare. */
export function judge(
  side: PlannedSide,
  planner: Planner,
  levelDb: number,
  source: SourceFacts,
): Judgement {
  const plan = planSide(side, planner, levelDb);
  const spare = spareRadius(side, plan);
  return {
    levelDb,
    spare,
    endDiameter: side.settings.innerDiameter + 2 * spare,
    faults: allFindings(side, verify(side, plan), source).filter(
      ({ severity }) => severity === 'fault',
    ),
  };
}
