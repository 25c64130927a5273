import { cheapestCovers } from '../model/fit-cover.js';
import type { LeastSet, WeighedRemedy } from './fit-result.js';
import { type Remedy, slotOf } from './remedy.js';
import { remedyCost } from './remedy-costs.js';
import { headroomAfter, type Patient, type Trial, tryRemedies } from './trial.js';

/** Sets that are really tried before the best of them is told with what it leaves. */
const MOST_SETS = 12;

/**
 * The cheapest set of remedies that clears all faults. Which faults each mends by itself is known;
 * sets that together mend all are tried for real, cheapest first, until one clears everything, for
 * remedies may stand in each other's way, or make each other needless. The set that is told was
 * measured anew as a whole.
 * @returns where nothing clears everything, the set that leaves least; null if nothing mends at all
 */
export async function leastSet(
  patient: Patient,
  weighed: readonly WeighedRemedy[],
): Promise<LeastSet | null> {
  const useful = weighed.filter(({ mends, brings }) => mends.length > 0 && brings.length === 0);
  const wanted = new Set(useful.flatMap(({ mends }) => mends));
  const faults = [...wanted].sort((a, b) => a - b);
  if (faults.length === 0) return null;
  const options = useful.map(({ remedy, cost, mends }) => ({
    cost,
    slot: slotOf(remedy),
    mends: mends.map((fault) => faults.indexOf(fault)),
  }));
  let best: { readonly remedies: readonly Remedy[]; readonly trial: Trial } | null = null;
  for (const cover of cheapestCovers(faults.length, options, MOST_SETS)) {
    const remedies = cover.options.flatMap((index) => useful[index]?.remedy ?? []);
    if (!goTogether(remedies)) continue;
    const trial = await tryRemedies(patient, remedies);
    if (best === null || trial.left.length < best.trial.left.length) best = { remedies, trial };
    if (trial.left.length === 0) break;
  }
  if (best === null) return null;
  return await rendered(patient, await needed(patient, best.remedies, best.trial));
}

/** A longer gap is one before the track that comes there in the order as it is. */
function goTogether(remedies: readonly Remedy[]): boolean {
  const isOfOrder = ({ kind }: Remedy) => kind === 'order' || kind === 'track-outward';
  return !remedies.some(isOfOrder) || remedies.every(({ kind }) => kind !== 'gap');
}

/** Without what is not needed beside the others, the dearest looked at first. */
async function needed(
  patient: Patient,
  remedies: readonly Remedy[],
  trial: Trial,
): Promise<readonly Remedy[]> {
  let kept = remedies;
  for (const remedy of [...remedies].sort((a, b) => remedyCost(b) - remedyCost(a))) {
    const others = kept.filter((each) => each !== remedy);
    if (others.length === 0) break;
    const without = await tryRemedies(patient, others);
    if (without.left.length <= trial.left.length) kept = others;
  }
  return kept;
}

async function rendered(patient: Patient, remedies: readonly Remedy[]): Promise<LeastSet> {
  const trial = await tryRemedies(patient, remedies, true);
  return {
    remedies,
    cost: remedies.reduce((sum, remedy) => sum + remedyCost(remedy), 0),
    left: trial.left,
    headroom: headroomAfter(patient, trial),
    spare: trial.judgement.spare,
  };
}
