import { FINDING_IDS, type Finding } from '../model/forecast-types.js';

const WORST_FIRST = ['fault', 'caution', 'note'] as const;

/**
 * The finding to look at first: the worst severity, then the kind that comes first in the list of
 * findings (a file that breaks off comes before what else is as grave, such as the jump at its end),
 * of one kind the furthest past its limit, and the earliest of equals. What the house
 * accepts counts only where there is nothing else.
 */
export function worstFinding(findings: readonly Finding[]): Finding | null {
  const [worst = null] = findings.toSorted(
    (one, other) =>
      Number(isAccepted(one)) - Number(isAccepted(other)) ||
      WORST_FIRST.indexOf(one.severity) - WORST_FIRST.indexOf(other.severity) ||
      kindOf(one) - kindOf(other) ||
      excess(other) - excess(one) ||
      (one.atSeconds ?? 0) - (other.atSeconds ?? 0),
  );
  return worst;
}

function isAccepted({ accepted }: Finding): boolean {
  return accepted !== undefined;
}

function kindOf({ id }: Finding): number {
  return id === 'truncated' ? -1 : FINDING_IDS.indexOf(id);
}

/** How far past its limit, whichever side of it is the wrong one. */
function excess({ value, limit }: Finding): number {
  return value === null ? 0 : Math.abs(value - (limit ?? 0));
}
