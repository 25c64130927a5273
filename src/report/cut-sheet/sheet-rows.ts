import type { ForecastedFile } from '../../forecast-result.js';
import { diameterAt, executedSpiral } from '../../model/executed-spiral.js';
import { ceilToStep } from '../../steps.js';
import type { Metres, MetresPerTurn, Seconds } from '../../units.js';
import { fixed, frequencyText, largeLengthText, type Units } from '../length-text.js';
import { safePitchText } from '../safe-pitch-text.js';
import { meterReading, safeCorner } from '../set-up.js';
import { trimSteps } from '../trim-steps.js';
import { widthText } from '../width-text.js';

/** Something that happens while a side is cut. */
export interface SheetRow {
  readonly kind: 'track' | 'marker' | 'hand' | 'end';
  readonly atSeconds: Seconds;
  /** null behind the program, where it is not told. */
  readonly diameter: Metres | null;
  /** Of a track, from 1 on. */
  readonly number: number | null;
  readonly what: string;
}

/** In time order: tracks, markers, what is set by hand after the start, the end, the lead-out. */
export function sheetRows(file: ForecastedFile, units: Units): SheetRow[] {
  const { forecast, settings, name } = file;
  const { durationSeconds, tracks = [] } = forecast;
  const spiral = executedSpiral(forecast, settings);
  const plain = (kind: SheetRow['kind'], atSeconds: Seconds, what: string): SheetRow => ({
    kind,
    atSeconds,
    diameter: diameterAt(spiral, atSeconds),
    number: null,
    what,
  });
  const starts = tracks.map(
    (track, at): SheetRow => ({
      kind: 'track',
      atSeconds: track.fromSeconds,
      diameter: track.startDiameter,
      number: at + 1,
      what: track.name,
    }),
  );
  const leadOut = durationSeconds + (settings.silentTurns * 60) / settings.rpm;
  return [
    ...(starts.length === 0 ? [{ ...plain('track', 0, name), number: 1 }] : starts),
    ...handSteps(file, units).map(({ kind, atSeconds, what }) => plain(kind, atSeconds, what)),
    plain('end', durationSeconds, 'program ends'),
    { ...plain('end', leadOut, 'lead-out from here on'), diameter: null },
  ].toSorted((one, other) => one.atSeconds - other.atSeconds);
}

type HandStep = Pick<SheetRow, 'kind' | 'atSeconds' | 'what'>;

function handSteps(file: ForecastedFile, units: Units): HandStep[] {
  const { hand, settings } = file;
  const { basePitch = [], baseWidth = [], bands = [] } = hand ?? {};
  const pitchText = (pitch: MetresPerTurn) =>
    safePitchText(ceilToStep(pitch, settings.pitchStep), settings.pitchStep, units);
  return [
    ...bands.map(({ fromSeconds, untilSeconds, pitch }) => {
      const lasts = fixed((untilSeconds - fromSeconds) / settings.speedFactor, 2);
      const what = `marker, ${largeLengthText(pitch, units)} a turn for ${Number(lasts)} s`;
      return { kind: 'marker', atSeconds: fromSeconds, what } as const;
    }),
    ...basePitch.filter(isLater).map(({ fromSeconds, pitch }) => {
      const what = `base pitch ${pitchText(pitch)}`;
      return { kind: 'hand', atSeconds: fromSeconds, what } as const;
    }),
    ...baseWidth.filter(isLater).map(({ fromSeconds, width }) => {
      const reading = meterReading(settings.depthMeter, width);
      const meter = reading === null ? '' : `, depth meter ${Number(fixed(reading, 2))}`;
      const what = `groove ${widthText(width, units)}${meter}`;
      return { kind: 'hand', atSeconds: fromSeconds, what } as const;
    }),
    ...filterSteps(file),
    ...trimSteps(hand?.tracks ?? [], settings).map((step) => ({ kind: 'hand', ...step }) as const),
  ];
}

/** What holds from the first sample on is dialled in before. */
function isLater({ fromSeconds }: { readonly fromSeconds: Seconds }): boolean {
  return fromSeconds > 0;
}

/** Each track whose filter is another than that of the one before it. */
function filterSteps({ hand, settings }: ForecastedFile): HandStep[] {
  const { tracks = [] } = hand ?? {};
  const texts = tracks.map(({ elliptical }) => {
    if (elliptical === undefined) return null;
    const position = safeCorner(elliptical.corner, settings.ellipticalSteps);
    if (position === null) return 'elliptical out';
    return `elliptical ${frequencyText(position)}, ${6 * elliptical.order} dB per octave`;
  });
  return tracks.flatMap(({ fromSeconds }, at): HandStep[] => {
    const what = texts[at] ?? null;
    if (at === 0 || what === null || what === texts[at - 1]) return [];
    return [{ kind: 'hand', atSeconds: fromSeconds, what }];
  });
}
