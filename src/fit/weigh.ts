import { type HighestLevels, highestLevels } from '../model/fit-highest.js';
import type { WeighedRemedy } from './fit-result.js';
import type { Remedy } from './remedy.js';
import { remedyCost } from './remedy-costs.js';
import { type Patient, type Trial, tryRemedies } from './trial.js';

/** What one remedy does by itself. */
export async function weighRemedy(patient: Patient, remedy: Remedy): Promise<WeighedRemedy> {
  return weighed(patient, remedy, await tryRemedies(patient, [remedy]));
}

export function weighed(patient: Patient, remedy: Remedy, trial: Trial): WeighedRemedy {
  // The level changes no motion, so the side holds what it held.
  const isLevel = remedy.kind === 'level';
  const highest = isLevel ? patient.headroom : highestLevels(trial.side, patient.planner);
  return {
    remedy,
    cost: remedyCost(remedy),
    mends: trial.mends,
    brings: trial.brings,
    spareGain: trial.judgement.spare - patient.judgement.spare,
    fillDb: highest.fillDb,
    traceDb: highest.traceDb,
    gainDb: difference(highestOf(highest), highestOf(patient.headroom)),
  };
}

/** The highest level at which a side fits and traces; null where there is none. */
export function highestOf({ fillDb, traceDb }: HighestLevels): number | null {
  return fillDb === null || traceDb === null ? null : Math.min(fillDb, traceDb);
}

function difference(after: number | null, before: number | null): number | null {
  return after === null || before === null ? null : after - before;
}
