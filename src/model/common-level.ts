import type { Headroom } from './forecast-types.js';
import { levelBelow } from './level.js';

/** What the common level needs to know of a side. */
export interface CommonLevelSide {
  readonly name: string;
  readonly path: string;
  readonly headroom: Headroom;
  /** Step of the level control, dB. */
  readonly levelStep: number;
  readonly isSilent: boolean;
}

/** A side that has a say in the common level. */
export interface CommonLevelShare {
  readonly side: CommonLevelSide;
  /** Its own recommended level, less the common one; null where either is. */
  readonly givesAwayDb: number | null;
}

export interface CommonLevel {
  /** null if a side holds at no level, or if no side has sound. */
  readonly levelDb: number | null;
  /** The sides that hold no higher than any other, all of them where several do. */
  readonly setBy: readonly CommonLevelSide[];
  /** In the order given, without those left out. */
  readonly shares: readonly CommonLevelShare[];
  /** Silent sides: any level is as good to them. */
  readonly leftOut: readonly CommonLevelSide[];
}

/**
 * The one level for all sides of an album: the least of their recommended levels, at which each
 * fits and traces, and a step of every side's level control. Ties are of the recommended levels,
 * since taming one of two sides that hold to the same step gains nothing.
 * A side of a machine that opens further when it hears more may hold at its own level and not at
 * a lower one: only a forecast at the common level shows that.
 */
export function commonLevel(sides: readonly CommonLevelSide[]): CommonLevel {
  const heard = sides.filter(({ isSilent }) => !isSilent);
  const least = Math.min(...heard.map(recommended));
  const levelDb = Number.isFinite(least) ? levelOfAllSteps(least, heard) : null;
  return {
    levelDb,
    setBy: heard.filter((side) => recommended(side) === least),
    shares: heard.map((side) => ({ side, givesAwayDb: givenAway(side, levelDb) })),
    leftOut: sides.filter(({ isSilent }) => isSilent),
  };
}

/** −∞ for a side that holds at no level: no side holds less. */
function recommended({ headroom }: CommonLevelSide): number {
  return headroom.recommendedDb ?? Number.NEGATIVE_INFINITY;
}

/** The next level down that every control can be set to; null below the levels looked at. */
function levelOfAllSteps(level: number, sides: readonly CommonLevelSide[]): number | null {
  const steps = sides.map(({ levelStep }) => levelStep);
  return levelBelow(level, Math.max(...steps), (levelDb) =>
    steps.every((step) => isMultiple(levelDb, step)),
  );
}

function isMultiple(level: number, step: number): boolean {
  return Math.abs(level / step - Math.round(level / step)) < 1e-9;
}

function givenAway({ headroom }: CommonLevelSide, levelDb: number | null): number | null {
  return headroom.recommendedDb === null || levelDb === null
    ? null
    : headroom.recommendedDb - levelDb;
}
