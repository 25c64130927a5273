import type { Seconds } from '../units.js';
import type { HandTrack } from './side-plan-input.js';

/** The track that a program time lies in; null in a gap, before the program and after it. */
export function trackAt<Track extends Pick<HandTrack, 'fromSeconds' | 'untilSeconds'>>(
  tracks: readonly Track[],
  atSeconds: Seconds,
): Track | null {
  return (
    tracks.find(
      ({ fromSeconds, untilSeconds }) => atSeconds >= fromSeconds && atSeconds < untilSeconds,
    ) ?? null
  );
}
