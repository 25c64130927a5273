import type { Finding, FindingId, Severity } from '../forecast-types.js';

/** A finding about the whole file and both walls, but for what `known` says. */
export function finding(
  id: FindingId,
  severity: Severity,
  known: Partial<Omit<Finding, 'id' | 'severity'>> = {},
): Finding {
  return {
    id,
    severity,
    atSeconds: null,
    untilSeconds: null,
    value: null,
    limit: null,
    unit: 'none',
    wall: null,
    frequency: null,
    detail: null,
    ...known,
  };
}
