import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Seconds } from '../units.js';
import { mattersAlone, worseBy } from './compare-margins.js';
import type { FindingChange } from './compare-types.js';
import { LEAD_OUT_ROOM } from './finding-details.js';
import { isAboutWholeSide } from './findings/whole-side.js';
import type { Finding } from './forecast-types.js';

/** Up to how far apart two findings say the same of one place, turns: one step of the plan. */
const TOUCHING_TURNS = 0.25;
/** Up to how far apart two that touch no other can still be the same one, turns. */
const SAME_TURNS = 2;
/** How far quarters may lie from each other and still be the same, of one. */
const SAME_QUARTER = 0.1;
/** What has no place comes before everything that has one. */
const WHOLE_SIDE = -1e9;

/**
 * What became of the findings. Those of one kind that touch say the same of one place, whether it
 * is now one finding or several; of the rest the nearest two within two turns are the same one.
 * A finding is worse if it is worse than all it stems from, better if all that it became are
 * better; new or gone if it has no other. Echo risks hang on which quarter turns count as quiet, and
 * are compared only where both files have the same ones.
 * @param offset how much later the same music comes in the new file
 * @returns in time order of the new file
 */
export function findingChanges(
  before: readonly Finding[],
  after: readonly Finding[],
  offset: Seconds,
  turn: Seconds,
): FindingChange[] {
  const quarters = (offset / turn) * QUARTERS_PER_TURN;
  const isOnGrid = Math.abs(quarters - Math.round(quarters)) <= SAME_QUARTER;
  const isComparable = ({ id }: Finding) => isOnGrid || id !== 'echo-risk';
  const [earlier, later] = [before.filter(isComparable), after.filter(isComparable)];
  const { became, stems } = relations(earlier, later, offset, turn);
  const changes = [
    ...later.map((is) => {
      const was = worst(stems.get(is) ?? []);
      if (was === null) return mattersAlone(is) ? change('new', null, is, offset) : null;
      return worseBy(was, is) > 1 ? change('worse', was, is, offset) : null;
    }),
    ...earlier.map((was) => {
      const is = worst(became.get(was) ?? []);
      if (is === null) return mattersAlone(was) ? change('gone', was, null, offset) : null;
      return worseBy(was, is) < -1 ? change('better', was, is, offset) : null;
    }),
  ];
  return changes
    .filter((one) => one !== null)
    .sort((one, other) => (one.atSeconds ?? WHOLE_SIDE) - (other.atSeconds ?? WHOLE_SIDE));
}

/** A finding as it lies when everything comes so much later. */
export function moved(finding: Finding, offset: Seconds): Finding {
  const later = (at: Seconds | null) => (at === null ? null : at + offset);
  const { atSeconds, untilSeconds } = finding;
  return { ...finding, atSeconds: later(atSeconds), untilSeconds: later(untilSeconds) };
}

interface Relations {
  readonly became: ReadonlyMap<Finding, readonly Finding[]>;
  readonly stems: ReadonlyMap<Finding, readonly Finding[]>;
}

function relations(
  before: readonly Finding[],
  after: readonly Finding[],
  offset: Seconds,
  turn: Seconds,
): Relations {
  const became = new Map<Finding, Finding[]>();
  const stems = new Map<Finding, Finding[]>();
  const relate = (was: Finding, is: Finding) => {
    became.set(was, [...(became.get(was) ?? []), is]);
    stems.set(is, [...(stems.get(is) ?? []), was]);
  };
  const near = before.flatMap((was) => {
    const there = moved(was, offset);
    return after
      .map((is) => ({ was, is, apart: distance(there, is) }))
      .filter(({ apart }) => apart <= SAME_TURNS * turn);
  });
  for (const { was, is, apart } of near) {
    if (apart <= TOUCHING_TURNS * turn) relate(was, is);
  }
  // The nearest two first, each in one pair at most.
  for (const { was, is } of near.sort((one, other) => one.apart - other.apart)) {
    if (!became.has(was) && !stems.has(is)) relate(was, is);
  }
  return { became, stems };
}

/** Seconds between two findings of one kind; Infinity for different kinds. */
function distance(one: Finding, other: Finding): Seconds {
  if (kind(one) !== kind(other)) return Number.POSITIVE_INFINITY;
  if (isAboutWholeSide(one) || isAboutWholeSide(other)) return 0;
  const [from, until] = span(one);
  const [otherFrom, otherUntil] = span(other);
  return Math.max(0, otherFrom - until, from - otherUntil);
}

/**
 * Too little land and none left are the same thing, more or less of it; so is too little room for
 * the lead-out, whatever it is called, and so is what is too long, with or without modulation.
 */
function kind({ id, detail }: Finding): string {
  if (id === 'overcut' || id === 'land-low') return 'land';
  if (detail === LEAD_OUT_ROOM) return detail;
  return id === 'too-long' ? id : `${id} ${detail ?? ''}`;
}

function span({ atSeconds, untilSeconds }: Finding): [Seconds, Seconds] {
  const from = atSeconds ?? 0;
  return [from, untilSeconds ?? from];
}

function worst(findings: readonly Finding[]): Finding | null {
  return findings.reduce<Finding | null>(
    (most, next) => (most === null || worseBy(most, next) > 0 ? next : most),
    null,
  );
}

function change(
  what: FindingChange['change'],
  before: Finding | null,
  after: Finding | null,
  offset: Seconds,
): FindingChange {
  const told = after ?? (before === null ? null : moved(before, offset));
  return { change: what, atSeconds: told?.atSeconds ?? null, before, after };
}
