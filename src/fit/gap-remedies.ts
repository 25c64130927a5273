import { LAND } from './local-ladders.js';
import type { Remedy } from './remedy.js';
import type { Patient } from './trial.js';

/**
 * Half a turn more silence in each gap of a sheet that has a fault of land in the turn after it, or
 * what limits the level: there a track's start faces the end of the one before it. Elsewhere such a
 * gap turns nothing against anything else and only takes room.
 */
export function gapRemedies({ cut, faults, headroom, side }: Patient): Remedy[] {
  const { tracks } = cut.hand;
  const places = [...faults, ...(headroom.limitedBy === null ? [] : [headroom.limitedBy])].filter(
    ({ id }) => LAND.includes(id),
  );
  const turn = side.motion.turnSeconds * (1 + side.settings.speedTolerance);
  return tracks.flatMap(({ name, fromSeconds }, place): Remedy[] => {
    const gap = fromSeconds - (tracks[place - 1]?.untilSeconds ?? fromSeconds);
    const isFaced = places.some(
      ({ atSeconds }) =>
        atSeconds !== null && atSeconds >= fromSeconds && atSeconds < fromSeconds + turn,
    );
    return gap > 0 && isFaced ? [{ kind: 'gap', place, name, quarters: 2 }] : [];
  });
}
