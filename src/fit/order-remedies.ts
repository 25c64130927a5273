import { highestLevels } from '../model/fit-highest.js';
import type { FindingId } from '../model/forecast-types.js';
import { planSide } from '../model/plan.js';
import { suggestedOrder } from '../model/suggested-order.js';
import type { ProgramSide } from '../program/program-side.js';
import { applyRemedies } from './apply-remedies.js';
import { predictedMotion } from './predicted-motion.js';
import type { Remedy } from './remedy.js';
import { type Patient, type Trial, tryCut } from './trial.js';
import { highestOf } from './weigh.js';

/** What lies further out does less of: the groove runs faster there. */
const OF_THE_RADIUS: readonly FindingId[] = ['facet', 'tight-bend'];
/** Tracks that are looked at, those with most of such faults first: each is a read of the side. */
const MOST_TRACKS = 2;
/** What an order must gain where it mends nothing, dB. */
const LEAST_DB = 0.05;

type Moved = Extract<Remedy, { readonly kind: 'track-outward' }>;

/**
 * Other running orders of a sheet's side that promise something: the one that bends least, and each
 * track with faults that the radius makes as little further out as mends them. What is promised is
 * reckoned from the motion as it was measured; what is told of a remedy is measured.
 */
export function orderRemedies(patient: Patient): Remedy[] {
  const { cut } = patient;
  const { program } = cut;
  if (program === null) return [];
  const moved = tracksAtFault(patient, program).flatMap(
    (track) => leastMove(patient, program, track) ?? [],
  );
  const best = bestOrder(patient);
  const isKnown = moved.some(({ order }) => order.join() === best?.order.join());
  return [...moved, ...(best === null || isKnown ? [] : [best])];
}

/** Places of unpinned tracks with such faults, those with most first. */
function tracksAtFault({ cut, faults }: Patient, { tracks }: ProgramSide): number[] {
  const counts = cut.hand.tracks.map(
    ({ fromSeconds, untilSeconds }) =>
      faults.filter(
        ({ id, atSeconds }) =>
          OF_THE_RADIUS.includes(id) &&
          atSeconds !== null &&
          atSeconds >= fromSeconds &&
          atSeconds < untilSeconds,
      ).length,
  );
  return [...counts.keys()]
    .filter((place) => (counts[place] ?? 0) > 0 && tracks[place]?.isPinned === false)
    .sort((a, b) => (counts[b] ?? 0) - (counts[a] ?? 0))
    .slice(0, MOST_TRACKS);
}

/** The nearest place further out that mends most; null where none mends anything. */
function leastMove(patient: Patient, { tracks }: ProgramSide, from: number): Moved | null {
  const free = [...tracks.keys()].filter((place) => tracks[place]?.isPinned === false);
  let best: { readonly remedy: Moved; readonly mends: number } | null = null;
  for (const to of free.filter((place) => place < from).reverse()) {
    const name = tracks[from]?.name ?? '';
    const order = movedOrder(tracks.length, free, from, to);
    const remedy: Moved = { kind: 'track-outward', name, from, to, order };
    const { mends, brings } = predicted(patient, remedy);
    if (brings.length === 0 && mends.length > (best?.mends ?? 0)) {
      best = { remedy, mends: mends.length };
    }
  }
  return best?.remedy ?? null;
}

/** The track at `from` comes to `to`; the unpinned ones between move up by one of their places. */
export function movedOrder(
  count: number,
  free: readonly number[],
  from: number,
  to: number,
): number[] {
  const order = Array.from({ length: count }, (_, place) => place);
  const between = free.filter((place) => place >= to && place <= from);
  for (const [at, place] of between.entries()) order[place] = between[at - 1] ?? from;
  return order;
}

function bestOrder(patient: Patient): Extract<Remedy, { readonly kind: 'order' }> | null {
  const { cut, side, planner, headroom } = patient;
  const best = suggestedOrder(side, planSide(side, planner, cut.levelDb));
  if (best === null || !(best.bendShare < best.bendShareBefore)) return null;
  const remedy = { kind: 'order', order: best.order } as const;
  const trial = predicted(patient, remedy);
  const after = highestOf(highestLevels(trial.side, planner)) ?? Number.NEGATIVE_INFINITY;
  const before = highestOf(headroom) ?? Number.NEGATIVE_INFINITY;
  const isWorth = trial.mends.length > trial.brings.length || after > before + LEAST_DB;
  return isWorth ? remedy : null;
}

function predicted(patient: Patient, remedy: Remedy): Trial {
  const { cut, side } = patient;
  const arranged = applyRemedies(cut, [remedy]);
  return tryCut(patient, arranged, predictedMotion(side.motion, cut, arranged));
}
