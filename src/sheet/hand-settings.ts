import type { HandBand, HandSettings, HandTrim } from '../model/side-plan-input.js';
import type { Settings } from '../settings.js';
import { ceilToStep } from '../steps.js';
import {
  type Metres,
  type MetresPerTurn,
  parseLength,
  parsePitch,
  type Seconds,
} from '../units.js';
import { pitchMisfit, widthMisfit } from './hand-limits.js';
import type { CutTrack, LaidTracks } from './lay-tracks.js';
import type { SheetTrack } from './sheet-schema.js';

/** Something of a track that cannot be as the sheet wants it. */
export interface Misfit {
  readonly track: number;
  readonly path: readonly PropertyKey[];
  readonly text: string;
}

/**
 * What the sheet sets by hand, in program time: times of a track count from its first sample; bands
 * lie in the middle of their gap, as far from both tracks as they can.
 * @param misfits takes what cannot be
 */
export function handSettings(
  cut: readonly CutTrack[],
  { tracks, format, settings }: LaidTracks,
  misfits: Misfit[],
): HandSettings {
  const secondsOf = (frame: number): Seconds => frame / format.sampleRate;
  const placed = cut.flatMap(({ track }, index) => {
    const laid = tracks[index];
    return laid === undefined ? [] : [{ track, index, laid, starts: secondsOf(laid.startFrame) }];
  });
  const inOrder = <T extends { readonly fromSeconds: Seconds }>(
    field: 'basePitch' | 'baseWidth',
    entriesOf: (track: SheetTrack) => readonly T[],
    misfitOf: (entry: T) => string | null,
  ): T[] => {
    const all: T[] = [];
    for (const { track, index, starts } of placed) {
      for (const [at, entry] of entriesOf(track).entries()) {
        const fromSeconds = starts + entry.fromSeconds;
        const before = all.at(-1)?.fromSeconds ?? Number.NEGATIVE_INFINITY;
        const path = [field, at, 'fromSeconds'];
        if (fromSeconds <= before) {
          const text = 'found a time before that of the track before it, expected a later one';
          misfits.push({ track: index, path, text });
        }
        const wrong = misfitOf(entry);
        if (wrong !== null) misfits.push({ track: index, path: [field, at], text: wrong });
        all.push({ ...entry, fromSeconds });
      }
    }
    return all;
  };
  return {
    basePitch: inOrder(
      'basePitch',
      ({ basePitch = [] }) =>
        basePitch.map(({ fromSeconds, pitch }) => ({
          fromSeconds,
          pitch: ceilToStep(metresPerTurn(pitch), settings.pitchStep),
        })),
      ({ pitch }) => pitchMisfit(pitch, settings),
    ),
    baseWidth: inOrder(
      'baseWidth',
      ({ baseWidth = [] }) =>
        baseWidth.map(({ fromSeconds, width }) => ({ fromSeconds, width: metres(width) })),
      ({ width }) => widthMisfit(width, settings),
    ),
    bands: placed.flatMap(({ track, index, starts }) => {
      const gap = starts - secondsOf(tracks[index - 1]?.stopFrame ?? 0);
      return bandIn(track, starts - gap, gap, settings, (text) => {
        misfits.push({ track: index, path: ['marker'], text });
      });
    }),
    tracks: placed.map(({ track, laid, starts }) => ({
      name: laid.name,
      isPinned: laid.isPinned,
      ...(laid.elliptical === null ? {} : { elliptical: laid.elliptical }),
      ...trimOf(track),
      fromSeconds: starts,
      untilSeconds: secondsOf(laid.stopFrame),
    })),
  };
}

function trimOf({ trimDb = 0, fadeInSeconds = 0, fadeOutSeconds = 0 }: SheetTrack): {
  readonly trim?: HandTrim;
} {
  if (trimDb === 0 && fadeInSeconds === 0 && fadeOutSeconds === 0) return {};
  return { trim: { gainDb: trimDb, fadeInSeconds, fadeOutSeconds } };
}

function bandIn(
  { marker = false }: SheetTrack,
  from: Seconds,
  gap: Seconds,
  { bandSeconds, bandPitch }: Settings,
  refuse: (text: string) => void,
): HandBand[] {
  if (marker === false) return [];
  const own = marker === true ? {} : marker;
  const { seconds = bandSeconds } = own;
  if (seconds > gap) {
    refuse(`found a band of ${seconds} s in a gap of ${Number(gap.toFixed(3))} s, expected room`);
  }
  const fromSeconds = from + (gap - seconds) / 2;
  const pitch = own.pitch === undefined ? bandPitch : metresPerTurn(own.pitch);
  if (!(pitch > 0 && pitch < Number.POSITIVE_INFINITY)) refuse('found no pitch, expected one');
  return [{ fromSeconds, untilSeconds: fromSeconds + seconds, pitch }];
}

/** The schema lets nothing else pass than what can be read, but for zero lines per inch. */
function metresPerTurn(text: string): MetresPerTurn {
  return parsePitch(text) ?? Number.NaN;
}

function metres(text: string): Metres {
  return parseLength(text) ?? Number.NaN;
}
