import type { Planner } from '../settings.js';
import type { Seconds } from '../units.js';
import { judge } from './fit-judge.js';
import { type QuarterSpan, withoutQuarters } from './fit-mask.js';
import type { Finding, FindingId, Headroom, SourceFacts } from './forecast-types.js';
import { largestLevel } from './level.js';
import { planSide } from './plan.js';
import { type PlannedSide, plannedSide } from './planned-side.js';
import { traceLimit } from './trace-limit.js';

/** A passage that holds the level down, and what it costs. */
export interface LimitingPassage {
  readonly id: FindingId;
  readonly atSeconds: Seconds;
  readonly untilSeconds: Seconds;
  /** The largest level without a fault, the passages before this one left out. */
  readonly levelDb: number;
  /** The same with this one left out too; at +12 dB no higher level is looked at. */
  readonly withoutDb: number;
}

/** Passages that are told. */
const MOST_PASSAGES = 4;
/** Passages that are looked at: what costs next to nothing is left out and not told. */
const MOST_LOOKED = 8;
const LEAST_DB = 0.1;
/** How often a passage may grow until the limit lies elsewhere. */
const MOST_GROWTH = 8;
/** What limits next within this belongs to the same passage; common practice. */
const NEAR: Seconds = 2;
/** How far over the limit a level is at which the whole of a passage is seen, dB. */
const LOOK_DB = 2;
/** How far over a level its limit is asked for, dB. */
const JUST_OVER_DB = 1 / 128;

/**
 * What limits the level without a fault, and how much louder the side could be traced if those
 * seconds were left out; then what limits next, and so on, loudest limit last. Left out means
 * unmodulated: what the seconds did to the turn after them is still there.
 * @returns empty where no level from −12 dB on traces, or none up to +12 dB does not
 */
export function limitingPassages(
  side: PlannedSide,
  planner: Planner,
  source: SourceFacts,
): LimitingPassage[] {
  const passages: LimitingPassage[] = [];
  const out: QuarterSpan[] = [];
  let level = traceLevel(side, planner);
  let left = side;
  for (let looked = 0; looked < MOST_LOOKED && passages.length < MOST_PASSAGES; looked++) {
    if (level === null) break;
    const limit = limitOver(left, planner, level);
    if (limit === null) break;
    const spans = [passageAt(left, planner, level, limit, source)];
    const grown = leftOut(side, [...out, ...spans]);
    let next = { side: grown, level: traceLevel(grown, planner) };
    for (let growth = 0; growth < MOST_GROWTH && next.level !== null; growth++) {
      const further = limitOver(next.side, planner, next.level);
      if (further === null || !isNear(side, spans, further)) break;
      spans.push(passageAt(next.side, planner, next.level, further, source));
      const more = leftOut(side, [...out, ...spans]);
      next = { side: more, level: traceLevel(more, planner) };
    }
    if (next.level === null || next.level <= level) break;
    const { first, end } = hull(spans);
    const passage = {
      id: limit.id,
      atSeconds: first * side.quarterSeconds,
      untilSeconds: end * side.quarterSeconds,
      levelDb: level,
      withoutDb: next.level,
    };
    if (next.level - level >= LEAST_DB) passages.push(passage);
    out.push(...spans);
    left = next.side;
    level = next.level;
  }
  return passages;
}

type Limit = NonNullable<Headroom['limitedBy']>;

function traceLevel(side: PlannedSide, planner: Planner): number | null {
  return largestLevel((levelDb) => traceLimit(side, planSide(side, planner, levelDb)) === null);
}

/** What the next louder level breaks; null where nothing, or nothing that has a place. */
function limitOver(side: PlannedSide, planner: Planner, levelDb: number): Limit | null {
  const limit = traceLimit(side, planSide(side, planner, levelDb + JUST_OVER_DB));
  return limit === null || limit.atSeconds === null ? null : limit;
}

function leftOut(side: PlannedSide, spans: readonly QuarterSpan[]): PlannedSide {
  return plannedSide(withoutQuarters(side.motion, spans), side.settings, side.hand);
}

/** The quarters of all faults that a somewhat louder side has about there. */
function passageAt(
  side: PlannedSide,
  planner: Planner,
  levelDb: number,
  { atSeconds }: Limit,
  source: SourceFacts,
): QuarterSpan {
  const at = atSeconds ?? 0;
  const { faults } = judge(side, planner, levelDb + LOOK_DB, source);
  let [from, until] = [at, at];
  for (const fault of faults.filter(hasPlace).sort(inTime)) {
    const [begins, ends] = endsOf(fault);
    if (begins > until + NEAR || ends < from - NEAR) continue;
    from = Math.min(from, begins);
    until = Math.max(until, ends);
  }
  const first = Math.floor(from / side.quarterSeconds + 1e-6);
  const last = Math.ceil(until / side.quarterSeconds - 1e-6);
  return { first, end: Math.max(last, Math.floor(at / side.quarterSeconds + 1e-6) + 1) };
}

function hasPlace({ id, atSeconds }: Finding): boolean {
  return id !== 'too-long' && atSeconds !== null;
}

function inTime(one: Finding, other: Finding): number {
  return endsOf(one)[0] - endsOf(other)[0];
}

function endsOf({ atSeconds, untilSeconds }: Finding): [from: Seconds, until: Seconds] {
  return [atSeconds ?? 0, untilSeconds ?? atSeconds ?? 0];
}

function isNear(side: PlannedSide, spans: readonly QuarterSpan[], { atSeconds }: Limit): boolean {
  const { first, end } = hull(spans);
  const quarter = (atSeconds ?? 0) / side.quarterSeconds;
  const near = NEAR / side.quarterSeconds;
  return quarter >= first - near && quarter <= end + near;
}

function hull(spans: readonly QuarterSpan[]): QuarterSpan {
  return {
    first: Math.min(...spans.map(({ first }) => first)),
    end: Math.max(...spans.map(({ end }) => end)),
  };
}
