import type { CommonLevel, CommonLevelSide } from '../model/common-level.js';
import type { CommonLevelJson } from './common-level-schema.js';
import { roundDb, roundSeconds } from './numbers.js';

/** The album's common level as it is written. */
export function commonLevelToJson(common: CommonLevel): CommonLevelJson {
  const { levelDb, setBy, shares, leftOut } = common;
  return {
    levelDb: roundDb(levelDb),
    setBy: setBy.map((side) => ({ ...named(side), limitedBy: limitOf(side) })),
    sides: shares.map(({ side, givesAwayDb }) => ({
      ...named(side),
      recommendedDb: roundDb(side.headroom.recommendedDb),
      givesAwayDb: roundDb(givesAwayDb),
    })),
    leftOut: leftOut.map((side) => ({ ...named(side), reason: 'silent' })),
  };
}

function named({ name, path }: CommonLevelSide): { name: string; path: string } {
  return { name, path };
}

function limitOf({ headroom: { limitedBy } }: CommonLevelSide) {
  if (limitedBy === null) return null;
  return { id: limitedBy.id, atSeconds: roundSeconds(limitedBy.atSeconds) };
}
