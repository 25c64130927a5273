import { allFindings, verdictOf } from '../model/findings/all-findings.js';
import { basePitchFor } from '../model/fit-base-pitch.js';
import { levelRows } from '../model/fit-levels.js';
import { limitingPassages } from '../model/fit-limits.js';
import { headroom } from '../model/level.js';
import { planSide } from '../model/plan.js';
import { verify } from '../model/verify.js';
import type { Planner } from '../settings.js';
import type { SideFit } from './fit-result.js';
import { formatFits } from './formats.js';
import { leastSet } from './least-set.js';
import type { MeasuredSide } from './measured-side.js';
import { patientOf } from './patient.js';
import { otherSpeed } from './side-wide.js';
import { weighAll } from './weigh-all.js';

/** What is asked of a fit, beyond the profile. */
export interface FitRequest {
  readonly levelDb: number;
  /** The level that the base pitch is wanted for. */
  readonly wantDb: number;
  /** Which planner stands beside the machine. */
  readonly planner: Planner;
}

/**
 * How loud and how long a side can be, and what would mend it, for the plan that the profile
 * executes: the level against the room, what limits it and where, the base pitch for a level, other
 * discs, and what each remedy does, computed from the music.
 */
export async function fitSide(measured: MeasuredSide, request: FitRequest): Promise<SideFit> {
  const { motion, sound, source, settings } = measured;
  const { levelDb, wantDb, planner } = request;
  const planners: Planner[] = planner === 'machine' ? ['machine'] : ['machine', planner];
  const executed = settings.executes === 'plan' ? planner : settings.executes;
  if (!planners.includes(executed)) planners.push(executed);
  const patient = patientOf(measured, executed, levelDb);
  const { side, faults } = patient;
  const findings = allFindings(side, verify(side, planSide(side, executed, levelDb)), source);
  const { remedies, leftOut } = await weighAll(patient, measured.isFiltered);
  const speeds = [{ rpm: settings.rpm, motion }];
  if (sound !== null) {
    const rpm = otherSpeed(settings.rpm);
    speeds.push({ rpm, motion: await sound.motionOf({ ...patient.cut, baked: { rpm } }) });
  }
  return {
    name: measured.name,
    sources: measured.sources,
    settings,
    tracks: measured.hand.tracks,
    durationSeconds: motion.durationSeconds,
    turns: side.turns,
    levelDb,
    executed,
    planners,
    verdict: verdictOf(findings),
    findings,
    faults,
    levels: levelRows(side, planners, source),
    headrooms: planners.map((each) =>
      each === executed ? patient.headroom : headroom(side, each),
    ),
    limits: limitingPassages(side, executed, source),
    basePitch: basePitchFor(side, executed, wantDb, source),
    formats: formatFits(patient, speeds),
    remedies,
    leastSet: faults.length === 0 ? null : await leastSet(patient, remedies),
    leftOut,
  };
}
