import type { Severity } from '../model/forecast-types.js';
import type { Failure } from '../report/failure.js';

export const DONE = 0;
export const FOUND = 1;
export const WRONG_USAGE = 2;
export const UNREADABLE = 3;
export const NOT_WRITTEN = 4;
export const BUG = 70;

/** What the exit codes mean, for the help; 130 is given where the signal arrives. */
export const EXIT_CODES = `Exit codes:
  0    done
  1    findings at or above --fail-on
  2    wrong usage or profile, or a pattern that matches nothing
  3    some input could not be read (the rest was done), or a folder holds none
  4    a result could not be written
  70   a bug in furrow
  130  interrupted`;

const SEVERITIES: readonly Severity[] = ['note', 'caution', 'fault'];

/**
 * What a run amounts to. A bug wins over what could not be written, that over unreadable input, and
 * that over findings; without `failOn` these are none.
 * @param unwritten how many results could not be written
 */
export function exitCodeOf(
  failures: readonly Failure[],
  unwritten: number,
  found: ReadonlySet<Severity>,
  failOn: Severity | undefined,
): number {
  if (failures.some(({ code }) => code === 'crashed')) return BUG;
  if (unwritten > 0) return NOT_WRITTEN;
  if (failures.length > 0) return UNREADABLE;
  if (failOn === undefined) return DONE;
  const grave = SEVERITIES.slice(SEVERITIES.indexOf(failOn));
  return grave.some((severity) => found.has(severity)) ? FOUND : DONE;
}
