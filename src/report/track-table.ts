import type { ForecastedFile } from '../forecast-result.js';
import type { TrackFigures } from '../model/forecast-types.js';
import { INCH, MICROMETRE, MIL, MILLIMETRE } from '../units.js';
import { widthOf } from './folder-clusters.js';
import { shortenNames } from './folder-shorten.js';
import { fixed, frequencyText, type Units } from './length-text.js';
import { timeText } from './place-text.js';
import { plainTable } from './plain-table.js';

/** From so many columns on there is room for all figures. */
const WIDE = 100;
/** Columns of a name: no more are looked at, no fewer can be told apart. */
const NAME = { longest: 32, shortest: 10 };

interface TrackField {
  readonly head: string;
  readonly unit: string;
  readonly isWide: boolean;
  readonly align: 'left' | 'right';
  readonly cell: (track: TrackFigures) => string;
}

/**
 * The tracks of a side, a line each: where each begins, its first and last diameter, how loud it is
 * cut, its least land and what is worst in it. No lines for a side of one file.
 */
export function trackTable(
  { forecast: { tracks = [] }, settings: { speedFactor } }: ForecastedFile,
  units: Units,
  columns: number,
  ascii = false,
): string[] {
  if (tracks.length === 0) return [];
  const fields = trackFields(units, speedFactor).filter(({ isWide }) => columns >= WIDE || !isWide);
  const withNames = (longest: number) => {
    const names = shortenNames(
      tracks.map(({ name }) => name),
      longest,
      ascii ? '~' : '…',
    );
    return tableOf(tracks, names, fields);
  };
  const lines = withNames(NAME.longest);
  const over = Math.max(...lines.map(widthOf)) - columns;
  return over <= 0 ? lines : withNames(Math.max(NAME.shortest, NAME.longest - over));
}

function tableOf(
  tracks: readonly TrackFigures[],
  names: readonly string[],
  fields: readonly TrackField[],
): string[] {
  return plainTable(
    [
      { align: 'right', gap: 2 },
      { align: 'left', gap: 1 },
      ...fields.map(({ align }) => ({ align, gap: align === 'left' ? 2 : 1 })),
    ],
    [
      ['', 'track', ...fields.map(({ head }) => head)],
      ['', '', ...fields.map(({ unit }) => unit)],
      ...tracks.map((track, at) => [
        String(at + 1),
        names[at] ?? '',
        ...fields.map(({ cell }) => cell(track)),
      ]),
    ],
  );
}

function trackFields(units: Units, speedFactor: number): readonly TrackField[] {
  const [large, small] = units === 'us' ? [INCH, MIL] : [MILLIMETRE, MICROMETRE];
  const digits = units === 'us' ? { large: 3, small: 2 } : { large: 1, small: 1 };
  const diameter = (length: number) => (length > 0 ? fixed(length / large, digits.large) : '–');
  const right = { isWide: false, align: 'right' } as const;
  const [largeUnit, smallUnit] = units === 'us' ? ['in', 'mil'] : ['mm', 'µm'];
  // At half speed the lathe's clock, which has no column of its own, is in the list of hot spots.
  const clock = speedFactor === 1 ? '' : 'program';
  return [
    { ...right, head: 'starts', unit: clock, cell: ({ fromSeconds }) => timeText(fromSeconds) },
    {
      ...right,
      head: 'lasts',
      unit: '',
      isWide: true,
      cell: ({ fromSeconds, untilSeconds }) => timeText(untilSeconds - fromSeconds),
    },
    { ...right, head: 'from', unit: largeUnit, cell: (track) => diameter(track.startDiameter) },
    { ...right, head: 'to', unit: largeUnit, cell: (track) => diameter(track.endDiameter) },
    { ...right, head: 'level', unit: 'dB', cell: ({ averageDb }) => fixed(averageDb, 1) },
    {
      ...right,
      head: 'loudest',
      unit: 'dB',
      isWide: true,
      cell: ({ loudestDb }) => fixed(loudestDb, 1),
    },
    {
      ...right,
      head: 'land',
      unit: smallUnit,
      cell: ({ landMin }) => fixed(landMin / small, digits.small),
    },
    { ...right, head: 'at', unit: '', cell: ({ landMinAtSeconds }) => timeText(landMinAtSeconds) },
    {
      ...right,
      head: 'treble',
      unit: '',
      isWide: true,
      cell: ({ meanFrequency }) => (meanFrequency === null ? '–' : frequencyText(meanFrequency)),
    },
    { head: 'worst', unit: '', isWide: false, align: 'left', cell: worstText },
  ];
}

function worstText({ worst }: TrackFigures): string {
  return worst === null || worst.severity === 'note' ? '' : worst.id;
}
