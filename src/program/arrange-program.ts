import type { HandBand, HandSettings, HandTrack } from '../model/side-plan-input.js';
import type { Seconds } from '../units.js';
import { ownStart, placeTrack } from './place-track.js';
import type { ProgramSide, ProgramTrack } from './program-side.js';
import { timeShift } from './time-shift.js';

/** Other places of a side's tracks, and more silence before some of these places. */
export interface Arrangement {
  /** `order[place]` is the track, counted as the side has them, that comes there. */
  readonly order: readonly number[];
  /** What is added to the gap before each place. */
  readonly added: readonly Seconds[];
}

/**
 * A side whose tracks lie otherwise: gaps and the markers in them stay at their places, as a side's
 * look has them; a track takes along what is set by hand in it and in the gap before it.
 */
export function arrangeProgram(side: ProgramSide, { order, added }: Arrangement): ProgramSide {
  const { tracks, format, hand } = side;
  const rate = format.sampleRate;
  const gaps = gapsBefore(side);
  const arranged: ProgramTrack[] = [];
  let endSeconds: Seconds = 0;
  for (const [place, at] of order.entries()) {
    const track = trackAt(tracks, at);
    const { sampleRate } = track.file.format;
    const frames = track.endFrame - track.firstFrame;
    const begins = endSeconds + (gaps[place] ?? 0) + (added[place] ?? 0);
    const start = Math.round(begins * sampleRate);
    endSeconds = (start + frames) / sampleRate;
    arranged.push({ ...track, ...placeTrack(start, frames, sampleRate, rate) });
  }
  const placed = arranged.map((track, place): HandTrack => {
    const { fromSeconds: _, untilSeconds: __, ...told } = trackAt(hand.tracks, order[place] ?? 0);
    return {
      ...told,
      fromSeconds: track.startFrame / rate,
      untilSeconds: track.stopFrame / rate,
    };
  });
  return {
    ...side,
    tracks: arranged,
    frames: arranged.at(-1)?.stopFrame ?? 0,
    hand: arrangedHand(hand, placed, { order, added }),
  };
}

/** Silence before each track; of the first from the start of the program on. */
function gapsBefore({ tracks, format }: ProgramSide): Seconds[] {
  const rate = format.sampleRate;
  let endSeconds = 0;
  return tracks.map((track) => {
    const { sampleRate } = track.file.format;
    const start = ownStart(track, sampleRate, rate);
    const gap = start / sampleRate - endSeconds;
    endSeconds = (start + track.endFrame - track.firstFrame) / sampleRate;
    return gap;
  });
}

function arrangedHand(
  hand: HandSettings,
  tracks: readonly HandTrack[],
  { order, added }: Arrangement,
): HandSettings {
  const shift = timeShift(hand.tracks, tracks, (at) => order.indexOf(at));
  const moved = <T extends { readonly fromSeconds: Seconds }>(entries: readonly T[]): T[] =>
    entries
      .map((entry) => ({ ...entry, fromSeconds: entry.fromSeconds + shift(entry.fromSeconds) }))
      .sort((a, b) => a.fromSeconds - b.fromSeconds);
  const inPlace = (band: HandBand): HandBand => {
    const place = hand.tracks.findIndex(
      ({ fromSeconds }) => fromSeconds >= band.untilSeconds - 1e-6,
    );
    const [before, after] = [hand.tracks[place], tracks[place]];
    if (before === undefined || after === undefined) return band;
    // In the middle of the gap, also of one that has grown.
    const later = after.fromSeconds - before.fromSeconds - (added[place] ?? 0) / 2;
    return {
      ...band,
      fromSeconds: band.fromSeconds + later,
      untilSeconds: band.untilSeconds + later,
    };
  };
  return {
    basePitch: moved(hand.basePitch),
    baseWidth: moved(hand.baseWidth),
    bands: hand.bands.map(inPlace),
    tracks,
  };
}

function trackAt<T>(tracks: readonly T[], at: number): T {
  const track = tracks[at];
  if (track === undefined) throw new RangeError(`track ${at} of ${tracks.length}`);
  return track;
}
