import type { Seconds } from '../../units.js';
import type { Finding, FindingId } from '../forecast-types.js';

/** What comes in crowds and is mended as one. */
const CROWDED: ReadonlySet<FindingId> = new Set([
  'land-low',
  'lift',
  'facet',
  'tight-bend',
  'echo-risk',
]);
/** How near to each other cautions and faults of one id are told as one. */
const ALTERNATING: Seconds = 2;
/** What adding up times may leave: a turn apart is within a turn. */
const ROUNDING: Seconds = 1e-9;

/**
 * Findings of the same id and detail that lie within one turn of each other as one, from the first
 * to the last; a caution and a fault, which differ in a limit only, within two seconds. The one
 * finding has severity, value, limit, wall and frequency of the worst of them: the higher severity,
 * then the value furthest past its limit.
 * Source: common practice, no published source.
 * @returns in no particular order
 */
export function mergeNear(findings: readonly Finding[], turn: Seconds): Finding[] {
  const merged = findings.filter(({ id }) => !CROWDED.has(id));
  for (const id of CROWDED) {
    const crowd: Finding[] = [];
    for (const next of findings.filter((one) => one.id === id).sort(inTime)) {
      const last = crowd.at(-1);
      if (last !== undefined && isNear(last, next, turn))
        crowd[crowd.length - 1] = join(last, next);
      else crowd.push(next);
    }
    merged.push(...crowd);
  }
  return merged;
}

function inTime(one: Finding, other: Finding): number {
  return start(one) - start(other);
}

function isNear(last: Finding, next: Finding, turn: Seconds): boolean {
  if (last.detail !== next.detail) return false;
  const within = last.severity === next.severity ? turn : ALTERNATING;
  return start(next) - end(last) <= within + ROUNDING;
}

function join(one: Finding, other: Finding): Finding {
  const worst = isWorse(other, one) ? other : one;
  return { ...worst, atSeconds: start(one), untilSeconds: Math.max(end(one), end(other)) };
}

function isWorse(one: Finding, other: Finding): boolean {
  if (one.severity !== other.severity) return one.severity === 'fault';
  return excess(one) > excess(other);
}

function excess({ value, limit }: Finding): number {
  return Math.abs((value ?? 0) - (limit ?? 0));
}

function start({ atSeconds }: Finding): Seconds {
  return atSeconds ?? 0;
}

function end({ atSeconds, untilSeconds }: Finding): Seconds {
  return untilSeconds ?? atSeconds ?? 0;
}
