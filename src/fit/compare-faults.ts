import type { Finding } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';

/** Which faults a change mends, and which it brings. */
export interface FaultChange {
  /** Indices of the faults before. */
  readonly mends: readonly number[];
  readonly brings: readonly Finding[];
}

/**
 * Two judgements of a side against each other. A fault is still there while one of its id and
 * detail touches its seconds, within a turn of them; what has no place is one of its id.
 * @param earlier how much earlier what lies at a time after the change lay before it
 */
export function compareFaults(
  before: readonly Finding[],
  after: readonly Finding[],
  turnSeconds: Seconds,
  earlier: (atSeconds: Seconds) => Seconds,
): FaultChange {
  const moved = after.map((fault) => asBefore(fault, earlier));
  const isSame = (one: Finding, other: Finding): boolean =>
    one.id === other.id &&
    one.detail === other.detail &&
    (isOfTheSide(one) || touches(one, other, turnSeconds));
  return {
    mends: [...before.keys()].filter(
      (index) => !moved.some((fault) => isSame(before[index] ?? fault, fault)),
    ),
    brings: moved.filter((fault) => !before.some((known) => isSame(known, fault))),
  };
}

/** Where a side ends says something of the whole of it. */
export function isOfTheSide({ id, atSeconds }: Finding): boolean {
  return id === 'too-long' || atSeconds === null;
}

function asBefore(fault: Finding, earlier: (atSeconds: Seconds) => Seconds): Finding {
  const { atSeconds, untilSeconds } = fault;
  const seconds = atSeconds === null ? 0 : earlier(atSeconds);
  return {
    ...fault,
    atSeconds: atSeconds === null ? null : atSeconds - seconds,
    untilSeconds: untilSeconds === null ? null : untilSeconds - seconds,
  };
}

function touches(one: Finding, other: Finding, within: Seconds): boolean {
  const [a, b] = [ends(one), ends(other)];
  return a.from <= b.until + within && b.from <= a.until + within;
}

function ends({ atSeconds, untilSeconds }: Finding): { from: Seconds; until: Seconds } {
  const from = atSeconds ?? 0;
  return { from, until: untilSeconds ?? from };
}
