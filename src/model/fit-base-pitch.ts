import type { Planner } from '../settings.js';
import { INCH, type MetresPerTurn } from '../units.js';
import { judge } from './fit-judge.js';
import type { Finding, SourceFacts } from './forecast-types.js';
import { type PlannedSide, plannedSide } from './planned-side.js';

/** The tightest base pitch that is looked at: common practice, a machine's own limit. */
const TIGHTEST: MetresPerTurn = INCH / 600;
/** How near to its limit a pitch without steps is searched, m per turn. */
const RESOLUTION: MetresPerTurn = 1e-8;
/** Pitches between the ends that are tried where neither end holds. */
const TRIES = 12;

/** Which base pitches hold a level. */
export interface BasePitchFit {
  readonly levelDb: number;
  /** The range that holds, both ends rounded to the pitch control's step into it; null: none. */
  readonly holds: { readonly tightest: MetresPerTurn; readonly widest: MetresPerTurn } | null;
  /**
   * Where none holds: the pitch that comes nearest, the tightest that fits or else the tightest
   * there is, and what is wrong with it.
   */
  readonly missing: { readonly pitch: MetresPerTurn; readonly faults: readonly Finding[] } | null;
}

/**
 * The base pitches at which a side fits and traces at a level. A wider one takes more room, a
 * tighter one leaves less land where the planner does not open by itself, so that what holds is a
 * range; both its ends are judged as they are given.
 * @param side with any base pitch
 * @param matters the faults that a pitch must be without to hold
 */
export function basePitchFor(
  side: PlannedSide,
  planner: Planner,
  levelDb: number,
  source: SourceFacts,
  matters: (fault: Finding) => boolean = isOfTheCut,
): BasePitchFit {
  const { pitchMax, pitchStep } = side.settings;
  const step = pitchStep ?? RESOLUTION;
  const known = new Map<number, readonly Finding[]>();
  const pitchOf = (steps: number): MetresPerTurn => Math.min(steps * step, pitchMax);
  const faultsAt = (steps: number): readonly Finding[] => {
    const found =
      known.get(steps) ??
      judge(withBasePitch(side, pitchOf(steps)), planner, levelDb, source).faults;
    known.set(steps, found);
    return found;
  };
  const isGood = (steps: number) => faultsAt(steps).every((fault) => !matters(fault));
  const fits = (steps: number) => faultsAt(steps).every(({ id }) => id !== 'too-long');
  const first = Math.ceil(TIGHTEST / step - 1e-9);
  const last = Math.floor(pitchMax / step + 1e-9);
  if (first > last || !fits(first)) return none(levelDb, pitchOf(first), faultsAt(first));
  const widestThatFits = lastThat(fits, first, last);
  const good = goodBetween(isGood, first, widestThatFits);
  if (good === null) return none(levelDb, pitchOf(widestThatFits), faultsAt(widestThatFits));
  return {
    levelDb,
    holds: {
      tightest: pitchOf(firstThat(isGood, first, good)),
      widest: pitchOf(lastThat(isGood, good, widestThatFits)),
    },
    missing: null,
  };
}

/** All but what no pitch can mend. */
function isOfTheCut({ id }: Finding): boolean {
  return id !== 'silent';
}

/** What a base pitch by itself can mend: room and land. */
export function isOfThePitch({ id }: Finding): boolean {
  return id === 'too-long' || id === 'overcut' || id === 'pitch-limit';
}

function none(levelDb: number, pitch: MetresPerTurn, faults: readonly Finding[]): BasePitchFit {
  return { levelDb, holds: null, missing: { pitch, faults } };
}

/** Whether a pitch is the tightest that is looked at, which is no limit of any side. */
export function isTightestLookedAt(pitch: MetresPerTurn, pitchStep: number | null): boolean {
  return pitch < TIGHTEST + (pitchStep ?? RESOLUTION);
}

/** The same side on a lathe of another base pitch. */
export function withBasePitch(side: PlannedSide, basePitch: MetresPerTurn): PlannedSide {
  return plannedSide(side.motion, { ...side.settings, basePitch }, side.hand);
}

/** One that is good: an end if there is one, else the first of some between; null if none is. */
function goodBetween(
  isGood: (steps: number) => boolean,
  first: number,
  last: number,
): number | null {
  for (let attempt = 0; attempt <= TRIES; attempt++) {
    const steps = Math.round(last + ((first - last) * attempt) / TRIES);
    if (isGood(steps)) return steps;
  }
  return null;
}

/** The last from `from`, which holds, after which one does not; found by halving. */
function lastThat(holds: (steps: number) => boolean, from: number, until: number): number {
  if (holds(until)) return until;
  let [good, bad] = [from, until];
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** The first up to `until`, which holds. */
function firstThat(holds: (steps: number) => boolean, from: number, until: number): number {
  if (holds(from)) return from;
  let [bad, good] = [from, until];
  while (good - bad > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
