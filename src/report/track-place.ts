import type { HandTrack } from '../model/side-plan-input.js';
import type { Seconds } from '../units.js';
import { timeText } from './place-text.js';

/** A moment of a side, as one of its tracks knows it. */
export interface TrackPlace {
  readonly name: string;
  /** From 1 on, as tracks are counted. */
  readonly number: number;
  /** From the first sample of the track. */
  readonly seconds: Seconds;
}

/** What hears a moment of a side; null in a gap, before, behind, and on a side of one file. */
export function trackPlace(
  atSeconds: Seconds,
  tracks: readonly HandTrack[] | undefined = [],
): TrackPlace | null {
  const at = tracks.findLastIndex(({ fromSeconds }) => fromSeconds <= atSeconds);
  const track = tracks[at];
  if (track === undefined || atSeconds >= track.untilSeconds) return null;
  return { name: track.name, number: at + 1, seconds: atSeconds - track.fromSeconds };
}

/** `track 2 at 00:31.8`; empty where there is none. */
export function trackPlaceText(
  atSeconds: Seconds,
  tracks: readonly HandTrack[] | undefined,
): string {
  const place = trackPlace(atSeconds, tracks);
  return place === null ? '' : `track ${place.number} at ${timeText(place.seconds)}`;
}
