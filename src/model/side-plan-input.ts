import type { Hertz, Metres, MetresPerTurn, Seconds } from '../units.js';

/**
 * What an operator sets by hand along a side. Times are of the program, from its first sample on,
 * ascending; what begins at a time holds until the next entry. Pitches are at most pitchMax, widths
 * at least widthMin and no deeper than depthMax: whoever makes the settings sees to that.
 */
export interface HandSettings {
  /** Base pitch from a time on; the profile's until the first. */
  readonly basePitch: readonly {
    readonly fromSeconds: Seconds;
    readonly pitch: MetresPerTurn;
  }[];
  /** Base width from a time on; the profile's until the first. */
  readonly baseWidth: readonly { readonly fromSeconds: Seconds; readonly width: Metres }[];
  /** Marker bands, each inside a gap; they do not overlap. */
  readonly bands: readonly HandBand[];
  /** The tracks, gaps left out; they do not overlap. */
  readonly tracks: readonly HandTrack[];
}

/** A stretch that is cut at a pitch of its own, so that the eye finds the place. */
export interface HandBand {
  readonly fromSeconds: Seconds;
  readonly untilSeconds: Seconds;
  readonly pitch: MetresPerTurn;
}

export interface HandTrack {
  readonly name: string;
  /** It keeps its place in any running order. */
  readonly isPinned?: boolean;
  readonly fromSeconds: Seconds;
  readonly untilSeconds: Seconds;
  /** Its own filter on the difference of the channels; left out where all tracks have the side's. */
  readonly elliptical?: { readonly corner: Hertz | null; readonly order: 1 | 2 };
  /** What the sheet does to its level; left out where it leaves the file as it is. */
  readonly trim?: HandTrim;
}

/** A track's level against its file's, dB, and its fades. */
export interface HandTrim {
  readonly gainDb: number;
  readonly fadeInSeconds: Seconds;
  readonly fadeOutSeconds: Seconds;
}

/** A side on which nothing is set by hand. */
export const NOTHING_BY_HAND: HandSettings = {
  basePitch: [],
  baseWidth: [],
  bands: [],
  tracks: [],
};
