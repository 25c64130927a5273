import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres, Seconds } from '../units.js';
import { LAND_MATTERS } from './compare-margins.js';
import type { ComparedSide, LandChange } from './compare-types.js';

/** How many stretches are told. */
const MOST_STRETCHES = 6;
/** What a shift may be off by, quarters; no shift is exact. */
const SHIFT_ERROR = 0.1;

/**
 * Stretches of time in which land was lost or gained, the largest few, in time order. A quarter has
 * lost land if it has less than every quarter of the other file that it overlaps, by a margin that
 * matters, and the reverse for what was gained: so another quarter grid is no change. Land that was
 * and is enough, landMin, has not changed; over the widest limit, landMin or echoLand, it is of no
 * use and counts as that limit. Changes less than a turn apart are one.
 */
export function landChanges(
  before: ComparedSide,
  after: ComparedSide,
  offset: Seconds,
): LandChange[] {
  const quarterSeconds = 60 / after.settings.rpm / QUARTERS_PER_TURN;
  const shift = offset / quarterSeconds;
  const [was, is] = [usefulLand(before), usefulLand(after)];
  const enough = after.settings.landMin;
  const lost = shortOf(is, was, -shift, enough).map(({ first, last, less, more }) => ({
    change: 'lost' as const,
    atSeconds: first * quarterSeconds,
    untilSeconds: (last + 1) * quarterSeconds,
    before: more,
    after: less,
  }));
  const gained = shortOf(was, is, shift, enough).map(({ first, last, less, more }) => ({
    change: 'gained' as const,
    atSeconds: (first + shift) * quarterSeconds,
    untilSeconds: (last + 1 + shift) * quarterSeconds,
    before: less,
    after: more,
  }));
  const size = ({ before: one, after: other }: LandChange) => Math.abs(other - one);
  return [...lost, ...gained]
    .sort((one, other) => size(other) - size(one))
    .slice(0, MOST_STRETCHES)
    .sort((one, other) => one.atSeconds - other.atSeconds);
}

/** Land of the executed plan per quarter, at most as much as any limit asks for. */
function usefulLand(side: ComparedSide): Float64Array {
  const useful = Math.max(side.settings.landMin, side.settings.echoLand);
  return executedLand(side).map((land) => Math.min(land, useful));
}

function executedLand({ forecast: { quarters, executes } }: ComparedSide): Float64Array {
  switch (executes) {
    case 'plan':
      return quarters.land;
    case 'machine':
      return quarters.machineLand;
    case 'fixed':
      return quarters.fixedLand;
  }
}

interface Stretch {
  /** The first and the last quarter, on the grid of the row that is short. */
  readonly first: number;
  readonly last: number;
  /** Least land of the quarters that are short, and of what they overlap in the other file. */
  readonly less: number;
  readonly more: number;
}

/** @param shift where quarter 0 of `row` lies on the grid of `other`, quarters */
function shortOf(row: Float64Array, other: Float64Array, shift: number, enough: Metres): Stretch[] {
  const stretches: Stretch[] = [];
  for (const [quarter, less] of row.entries()) {
    if (less >= enough) continue;
    const more = leastOf(other, quarter + shift, shift === 0 ? 0 : SHIFT_ERROR);
    if (more === null || less > more - LAND_MATTERS) continue;
    const near = stretches.at(-1);
    if (near !== undefined && quarter - near.last <= QUARTERS_PER_TURN) {
      stretches[stretches.length - 1] = {
        first: near.first,
        last: quarter,
        less: Math.min(near.less, less),
        more: Math.min(near.more, more),
      };
    } else stretches.push({ first: quarter, last: quarter, less, more });
  }
  return stretches;
}

/** The least value of the quarters that [place, place + 1] touches; null if it leaves the row. */
function leastOf(row: Float64Array, place: number, error: number): number | null {
  const first = Math.floor(place - error);
  const last = Math.ceil(place + 1 + error) - 1;
  if (first < 0 || last >= row.length) return null;
  return row.subarray(first, last + 1).reduce((least, value) => Math.min(least, value));
}
