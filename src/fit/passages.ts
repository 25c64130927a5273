import type { Finding, FindingId } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import { isOfTheSide } from './compare-faults.js';

/** Seconds that are treated as one, with the faults in them. */
export interface Passage {
  readonly fromSeconds: Seconds;
  readonly untilSeconds: Seconds;
  readonly faults: readonly PassageFault[];
}

export interface PassageFault {
  /** Its place among the faults of the side. */
  readonly index: number;
  readonly fault: Finding;
}

/** Faults as near to each other as this are heard as one passage; common practice. */
const NEAR: Seconds = 2;

/** The faults of a side that have a place, gathered to passages, in time. */
export function passagesOf(faults: readonly Finding[]): Passage[] {
  const placed = faults
    .map((fault, index) => ({ fault, index, from: fault.atSeconds ?? 0, until: endOf(fault) }))
    .filter(({ fault }) => !isOfTheSide(fault))
    .sort((a, b) => a.from - b.from);
  const passages: Passage[] = [];
  for (const { fault, index, from, until } of placed) {
    const last = passages.at(-1);
    if (last !== undefined && from <= last.untilSeconds + NEAR) {
      passages[passages.length - 1] = {
        ...last,
        untilSeconds: Math.max(last.untilSeconds, until),
        faults: [...last.faults, { index, fault }],
      };
    } else {
      passages.push({ fromSeconds: from, untilSeconds: until, faults: [{ index, fault }] });
    }
  }
  return passages;
}

function endOf({ atSeconds, untilSeconds }: Finding): Seconds {
  return untilSeconds ?? atSeconds ?? 0;
}

/** Faults of these ids, in the order of the side's. */
export function faultsOf({ faults }: Passage, ids: readonly FindingId[]): PassageFault[] {
  return faults.filter(({ fault }) => ids.includes(fault.id));
}
