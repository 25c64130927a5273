import type { MotionSummary } from '../analysis/motion.js';
import { type Judgement, judge } from '../model/fit-judge.js';
import type { Finding, Headroom, SourceFacts } from '../model/forecast-types.js';
import { headroom } from '../model/level.js';
import { type PlannedSide, plannedSide } from '../model/planned-side.js';
import type { Planner } from '../settings.js';
import { applyRemedies, type Cut } from './apply-remedies.js';
import { earlierIn } from './arrange-cut.js';
import { compareFaults, type FaultChange } from './compare-faults.js';
import type { MeasuredSound } from './measured-sound.js';
import type { Remedy } from './remedy.js';
import { isBeyondCutting } from './side-wide.js';

/** A side whose remedies are tried, one set after the other. */
export interface Patient {
  readonly cut: Cut;
  readonly planner: Planner;
  readonly source: SourceFacts;
  /** As it is planned, without any remedy. */
  readonly side: PlannedSide;
  readonly judgement: Judgement;
  readonly headroom: Headroom;
  /** The faults that something may mend. */
  readonly faults: readonly Finding[];
  /** Null where the motion was saved and there is no sound to change. */
  readonly sound: MeasuredSound | null;
}

/** What a set of remedies makes of a side. */
export interface Trial extends FaultChange {
  readonly cut: Cut;
  readonly side: PlannedSide;
  readonly judgement: Judgement;
  /** The faults that are left, those that nothing mends not counted. */
  readonly left: readonly Finding[];
}

/**
 * Plans and judges the side with remedies applied, all together.
 * @param isRendered measures all of the changed side anew, nothing taken from before
 */
export async function tryRemedies(
  patient: Patient,
  remedies: readonly Remedy[],
  isRendered = false,
): Promise<Trial> {
  const cut = applyRemedies(patient.cut, remedies);
  return tryCut(patient, cut, await motionOf(patient, cut, isRendered));
}

/** Plans and judges the side as it is then cut, from its motion. */
export function tryCut(patient: Patient, cut: Cut, motion: MotionSummary): Trial {
  const { planner, source, faults, side } = patient;
  const planned = plannedSide(motion, cut.settings, cut.hand);
  const judgement = judge(planned, planner, cut.levelDb, source);
  const left = judgement.faults.filter((fault) => !isBeyondCutting(fault));
  const earlier = earlierIn(patient.cut, cut);
  const change = compareFaults(faults, left, side.motion.turnSeconds, earlier);
  return { cut, side: planned, judgement, left, ...change };
}

async function motionOf(
  { sound, side, cut: before }: Patient,
  cut: Cut,
  isRendered: boolean,
): Promise<MotionSummary> {
  if (sound !== null) return await (isRendered ? sound.rendered(cut) : sound.motionOf(cut));
  if (cut.edits.length > 0 || cut.baked !== before.baked) throw new Error('there is no sound');
  const { delayMotion } = await import('./moved-motion.js');
  return delayMotion(side.motion, cut.silence);
}

/** How loud the side holds after a trial; re the profile, all remedies but the level's applied. */
export function headroomAfter({ planner }: Patient, { side }: Trial): Headroom {
  return headroom(side, planner);
}
