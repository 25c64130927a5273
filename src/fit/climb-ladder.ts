import type { WeighedRemedy } from './fit-result.js';
import type { Ladder } from './local-ladders.js';
import { type Patient, type Trial, tryRemedies } from './trial.js';
import { weighed } from './weigh.js';

/**
 * The mildest remedy of a ladder that mends all that it is for, found by halving; where none does,
 * the strongest, if it mends anything; else null. More of one kind is taken to mend no less; the
 * remedy that is told has been tried itself.
 */
export async function climbLadder(
  patient: Patient,
  { targets, rungs }: Ladder,
): Promise<WeighedRemedy | null> {
  const strongest = rungs.at(-1);
  if (strongest === undefined) return null;
  const mendsAll = ({ mends }: Trial) => targets.every((target) => mends.includes(target));
  let remedy = strongest;
  let best = await tryRemedies(patient, [strongest]);
  if (!mendsAll(best)) {
    return best.mends.length === 0 ? null : weighed(patient, remedy, best);
  }
  let [low, high] = [0, rungs.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    const rung = rungs[middle] ?? strongest;
    const trial = await tryRemedies(patient, [rung]);
    if (mendsAll(trial)) {
      [remedy, best] = [rung, trial];
      high = middle;
    } else {
      low = middle + 1;
    }
  }
  return weighed(patient, remedy, best);
}
