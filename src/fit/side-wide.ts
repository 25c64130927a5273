import type { BasePitchFit } from '../model/fit-base-pitch.js';
import type { Finding } from '../model/forecast-types.js';
import type { Settings } from '../settings.js';
import { MIL } from '../units.js';
import { cornersOf, fallingGains, isPossible } from './local-ladders.js';
import type { Remedy } from './remedy.js';

/** The side's level is lowered by so much at most, but for the level that holds; dB. */
const MOST_LEVEL_DB = 3;
/** The base width is set wider and narrower by so many tenths of a mil. */
const WIDTH_STEPS = [-4, -2, -1, 1, 2, 4];

/**
 * Everything that can be done about a side as a whole; of the elliptical filter its strongest
 * positions, since where these do nothing no milder one does.
 * @param pitch the base pitches at which there is room and land at the level as it is
 * @param holdsDb the highest level that holds, re the planned one; null if none does
 * @param isFiltered some of its tracks have an elliptical filter of their own, which goes first
 */
export function sideWide(
  settings: Settings,
  pitch: BasePitchFit,
  holdsDb: number | null,
  isFiltered: boolean,
): Remedy[] {
  return [
    { kind: 'silence', quarters: 2 },
    ...pitches(settings, pitch),
    ...widths(settings),
    { kind: 'polarity', polarity: settings.polarity === 1 ? -1 : 1 },
    ...levels(settings, holdsDb),
    ...(isFiltered ? [] : strongestEllipticals(settings)),
    { kind: 'rpm', rpm: otherSpeed(settings.rpm) },
  ];
}

/** The other of the two speeds of a disc, 33⅓ and 45. */
export function otherSpeed(rpm: number): number {
  return Math.abs(rpm - 45) < 5 ? 100 / 3 : 45;
}

/** Into the range that holds, if there is one and it is not there. */
function pitches({ basePitch }: Settings, { holds }: BasePitchFit): Remedy[] {
  if (holds === null) return [];
  const pitch = Math.min(Math.max(basePitch, holds.tightest), holds.widest);
  return Math.abs(pitch - basePitch) < 1e-9 ? [] : [{ kind: 'base-pitch', pitch }];
}

function widths(settings: Settings): Remedy[] {
  return WIDTH_STEPS.map((steps) => settings.baseWidth + (steps * MIL) / 10)
    .filter((width) => isPossible(width, settings))
    .map((width): Remedy => ({ kind: 'base-width', width }));
}

function levels({ levelStep }: Settings, holdsDb: number | null): Remedy[] {
  const gains = fallingGains(levelStep, MOST_LEVEL_DB);
  const further = holdsDb !== null && holdsDb < -MOST_LEVEL_DB ? [holdsDb] : [];
  return [...gains, ...further].map((gainDb): Remedy => ({ kind: 'level', gainDb }));
}

type Elliptical = Extract<Remedy, { readonly kind: 'elliptical' }>;

/** Of each order the highest corner. */
function strongestEllipticals(settings: Settings): Elliptical[] {
  const all = ellipticals(settings);
  return ([1, 2] as const).flatMap((order) => all.findLast((each) => each.order === order) ?? []);
}

/** All but the strongest. */
export function milderEllipticals(settings: Settings): Elliptical[] {
  const strongest = strongestEllipticals(settings).map(({ corner, order }) => `${corner} ${order}`);
  return ellipticals(settings).filter(
    ({ corner, order }) => !strongest.includes(`${corner} ${order}`),
  );
}

/** Each position that takes more out than the side's own: a milder one would be no remedy. */
function ellipticals(settings: Settings): Elliptical[] {
  const own = settings.ellipticalHz ?? 0;
  return cornersOf(settings).flatMap((corner) =>
    ([1, 2] as const)
      .filter((order) => corner > own || (corner === own && order > settings.ellipticalOrder))
      .map((order): Elliptical => ({ kind: 'elliptical', corner, order })),
  );
}

/** Faults that nothing about the cut can mend. */
export function isBeyondCutting({ id }: Finding): boolean {
  return id === 'silent';
}
