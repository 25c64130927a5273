import type { SampleFormat } from '../analysis/sample-format.js';
import { placeTrack } from '../program/place-track.js';
import { programRate } from '../program/program-rate.js';
import type { Elliptical, ProgramTrack, TrackFile } from '../program/program-side.js';
import type { Settings } from '../settings.js';
import type { Hertz, Seconds } from '../units.js';
import type { SheetTrack } from './sheet-schema.js';

/** A track of a sheet, its file, and what of the file it is. */
export interface CutTrack {
  readonly track: SheetTrack;
  readonly name: string;
  readonly file: TrackFile;
  readonly firstFrame: number;
  readonly endFrame: number;
}

/** Tracks as one program. */
export interface LaidTracks {
  readonly settings: Settings;
  readonly format: SampleFormat;
  readonly frames: number;
  readonly isUntouched: boolean;
  readonly tracks: readonly ProgramTrack[];
}

/**
 * Puts tracks one behind the other: each begins its gap, rounded to a frame of its own, after the
 * end of the one before it, so that pieces of one file join to the sample at any rate. Where all have one elliptical filter, it becomes the side's, and the
 * analysis does it as it does a file's; else each track gets its own before the analysis.
 */
export function layTracks(cut: readonly CutTrack[], settings: Settings): LaidTracks {
  const filters = cut.map(({ track }) => ellipticalOf(track, settings));
  const [first = { corner: settings.ellipticalHz, order: settings.ellipticalOrder }] = filters;
  const agree = filters.every((filter) => isSameFilter(filter, first));
  const shared = agree
    ? { ...settings, ellipticalHz: first.corner, ellipticalOrder: first.order }
    : settings;
  const formats = cut.map(({ file }) => file.format);
  const rate = programRate(formats.map(({ sampleRate }) => sampleRate));
  const tracks: ProgramTrack[] = [];
  let endSeconds = 0;
  for (const [index, each] of cut.entries()) {
    const placed = laid(each, agree ? null : (filters[index] ?? null), endSeconds, rate);
    endSeconds = placed.endSeconds;
    tracks.push(placed.track);
  }
  const isUntouched = agree && tracks.every(isAsInFile) && formats.every(isSameFormat(formats[0]));
  const isMono = agree && formats.every(({ channels }) => channels === 1);
  return {
    settings: shared,
    format:
      isUntouched && formats[0] !== undefined
        ? formats[0]
        : { encoding: 'float', bitDepth: 64, channels: isMono ? 1 : 2, sampleRate: rate },
    frames: tracks.at(-1)?.stopFrame ?? 0,
    isUntouched,
    tracks,
  };
}

function ellipticalOf(track: SheetTrack, settings: Settings): Elliptical {
  const { ellipticalHz = settings.ellipticalHz, ellipticalOrder = settings.ellipticalOrder } =
    track;
  return { corner: ellipticalHz, order: ellipticalOrder };
}

/** Without a corner the order says nothing. */
function isSameFilter(one: Elliptical, other: Elliptical): boolean {
  if (one.corner === null) return other.corner === null;
  return one.corner === other.corner && one.order === other.order;
}

function laid(
  { track, name, file, firstFrame, endFrame }: CutTrack,
  elliptical: Elliptical | null,
  before: Seconds,
  rate: Hertz,
): { readonly track: ProgramTrack; readonly endSeconds: Seconds } {
  const { sampleRate } = file.format;
  // In frames of its own, from the first sample of the program on.
  const start = Math.round((before + (track.gapSeconds ?? 0)) * sampleRate);
  const frames = endFrame - firstFrame;
  return {
    endSeconds: (start + frames) / sampleRate,
    track: {
      name,
      file,
      firstFrame,
      endFrame,
      ...placeTrack(start, frames, sampleRate, rate),
      gain: 10 ** ((track.trimDb ?? 0) / 20),
      fadeInFrames: Math.round((track.fadeInSeconds ?? 0) * sampleRate),
      fadeOutFrames: Math.round((track.fadeOutSeconds ?? 0) * sampleRate),
      elliptical,
      isPinned: track.pinned ?? false,
    },
  };
}

function isAsInFile({ gain, fadeInFrames, fadeOutFrames }: ProgramTrack): boolean {
  return gain === 1 && fadeInFrames === 0 && fadeOutFrames === 0;
}

function isSameFormat(first: SampleFormat | undefined) {
  return (format: SampleFormat): boolean => JSON.stringify(format) === JSON.stringify(first);
}
