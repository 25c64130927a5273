import type { Metres, Seconds } from '../units.js';
import type { Finding, Severity } from './forecast-types.js';

/**
 * From where on a difference is told. All of them: common practice, no published source; each is
 * about what a house can set or read, and far over what the same music gives on another quarter
 * grid.
 */

/**
 * Land, width, depth or pitch of a finding: a microscope is read to about 1 µm, and vertical bass
 * was seen to change by 1.1 µm with the quarter grid.
 */
const LENGTH_MATTERS: Metres = 1.5e-6;
/** Land of a stretch: an automation was seen to leave 2.8 µm more or less on another quarter grid. */
export const LAND_MATTERS: Metres = 3e-6;
/** Where a side ends: a rule on the disc is read to about that. */
export const DIAMETER_MATTERS: Metres = 1e-4;
/** A level or a loudness: the usual step of a level control. */
export const LEVEL_MATTERS = 0.5;
/** Part of a share of time or of a count: a worst second was seen to change by 18 % with the grid. */
const SHARE_MATTERS = 0.25;
/** A length of program, or a shift: the last digit that times are told to. */
export const TIME_MATTERS: Seconds = 0.05;

/**
 * How much worse a finding has become, in margins that matter: over 1 it is worse, under −1 it is
 * better, ±Infinity if its severity is another. 0 where there are no values to compare.
 */
export function worseBy(before: Finding, after: Finding): number {
  if (before.severity !== after.severity) {
    return isMoreSevere(after.severity, before.severity)
      ? Number.POSITIVE_INFINITY
      : Number.NEGATIVE_INFINITY;
  }
  const [was, is] = [excess(before), excess(after)];
  if (was === null || is === null || was === is) return 0;
  return (is - was) / Math.max(margin(before), margin(after));
}

/** How bad a finding was, as far as that is known. */
export interface EarlierFinding {
  readonly severity?: Severity | undefined;
  readonly value?: number | null | undefined;
}

/**
 * Whether a finding has clearly outgrown what it was: graver, or further in the direction in which
 * it passes its limit by more than the margin that matters, whatever its limit was then. What is
 * less grave than it was has not, and neither has what has no value to compare.
 */
export function hasOutgrown(was: EarlierFinding, is: Finding): boolean {
  if (was.severity !== undefined && was.severity !== is.severity) {
    return isMoreSevere(is.severity, was.severity);
  }
  if (is.value === null || is.limit === null || was.value === undefined || was.value === null)
    return false;
  const more = is.value < is.limit ? was.value - is.value : is.value - was.value;
  return more > Math.max(margin(is), margin({ ...is, value: was.value }));
}

/**
 * Whether a finding is worth telling when it comes or goes: any fault, all that crosses landMin,
 * else what is clearly past its limit.
 */
export function mattersAlone(finding: Finding): boolean {
  const past = excess(finding);
  if (finding.severity === 'fault' || finding.id === 'land-low') return true;
  return past === null || past >= margin(finding);
}

function isMoreSevere(one: Severity, other: Severity): boolean {
  return one !== other && (one === 'fault' || other === 'note');
}

/** How far a value is past its limit, on whichever side of it. */
function excess({ value, limit }: Finding): number | null {
  return value === null || limit === null ? null : Math.abs(value - limit);
}

function margin({ id, unit, value }: Finding): number {
  switch (unit) {
    case 'metre':
      return id === 'too-long' || id === 'off-standard' ? DIAMETER_MATTERS : LENGTH_MATTERS;
    case 'decibel-full-scale':
      return LEVEL_MATTERS;
    case 'ratio':
    case 'second':
    case 'count':
    case 'hertz':
    case 'none':
      return SHARE_MATTERS * Math.abs(value ?? 0);
  }
}
