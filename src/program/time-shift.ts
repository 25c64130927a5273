import type { HandTrack } from '../model/side-plan-input.js';
import type { Seconds } from '../units.js';

/**
 * How much later what lies at a time comes once tracks lie otherwise. A gap goes with the track
 * after it, what lies behind the last track with that.
 * @param from the tracks in time
 * @param to the same tracks where they lie then, in time
 * @param placeIn where a track of `from` comes among `to`
 */
export function timeShift(
  from: readonly HandTrack[],
  to: readonly HandTrack[],
  placeIn: (track: number) => number,
): (atSeconds: Seconds) => Seconds {
  const shifts = from.map(
    ({ fromSeconds }, track) => (to[placeIn(track)]?.fromSeconds ?? fromSeconds) - fromSeconds,
  );
  return (atSeconds) => {
    const track = from.findIndex(({ untilSeconds }) => atSeconds < untilSeconds);
    return shifts.at(track) ?? 0;
  };
}
