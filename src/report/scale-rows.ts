import type { ForecastedFile } from '../forecast-result.js';
import {
  diameterAt,
  type ExecutedSpiral,
  executedSpiral,
  timeAtDiameter,
} from '../model/executed-spiral.js';
import type { HotSpot } from '../model/forecast-types.js';
import type { HandTrack } from '../model/side-plan-input.js';
import type { Settings } from '../settings.js';
import type { Metres, Seconds } from '../units.js';

/** What happens where a row stands. */
export type ScaleEvent =
  | { readonly kind: 'start' | 'end' | 'lead-out' }
  | { readonly kind: 'preferred' | 'limit' | 'finishing'; readonly isReached: boolean }
  | { readonly kind: 'track'; readonly number: number; readonly name: string }
  | { readonly kind: 'spot'; readonly spot: HotSpot };

/** A line of the scale; without a time it is a diameter that the program does not come to. */
export interface ScaleRow {
  readonly atSeconds: Seconds | null;
  /** null where it is not told: behind the program. */
  readonly diameter: Metres | null;
  readonly events: readonly ScaleEvent[];
}

/** Minutes between two rows: the least that keeps the scale on a page of 60 lines. */
const STEPS = [1, 2, 5, 10, 20, 60];
const MOST_MINUTES = 31;
/** Rows that are shown with the same tenth of a second are one. */
const SAME: Seconds = 0.05;

/** Every minute of the program, its start and end, tracks, hot spots and limits, in time. */
export function scaleRows({ forecast, settings, hand }: ForecastedFile): ScaleRow[] {
  const spiral = executedSpiral(forecast, settings);
  const { durationSeconds, hotSpots } = forecast;
  const tracks = trackRows(spiral, hand?.tracks ?? []);
  const rows = [
    ...minuteRows(spiral, MOST_MINUTES - tracks.length),
    rowAt(spiral, 0, { kind: 'start' }),
    ...tracks,
    rowAt(spiral, durationSeconds, { kind: 'end' }),
    ...hotSpots.map((spot) => ({
      atSeconds: spot.atSeconds,
      diameter: 2 * spot.radius,
      events: [{ kind: 'spot', spot } as const],
    })),
    leadOutRow(durationSeconds, settings),
    ...limitRows(spiral, settings),
  ];
  return merged(rows.toSorted(inTime));
}

function minuteRows(spiral: ExecutedSpiral, most: number): ScaleRow[] {
  const { durationSeconds } = spiral;
  const step = 60 * (STEPS.find((each) => durationSeconds / 60 / each <= most) ?? 60);
  const count = Math.floor(durationSeconds / step) + 1;
  return Array.from({ length: count }, (_, minute) => rowAt(spiral, minute * step));
}

function rowAt(spiral: ExecutedSpiral, atSeconds: Seconds, event?: ScaleEvent): ScaleRow {
  const events = event === undefined ? [] : [event];
  return { atSeconds, diameter: diameterAt(spiral, atSeconds), events };
}

/** Where the tracks of a sheet start; of one alone nothing is told. */
function trackRows(spiral: ExecutedSpiral, tracks: readonly HandTrack[]): ScaleRow[] {
  if (tracks.length < 2) return [];
  return tracks.map(({ fromSeconds, name }, at) =>
    rowAt(spiral, fromSeconds, { kind: 'track', number: at + 1, name }),
  );
}

/** After the silent turns, whose pitch the forecast does not tell. */
function leadOutRow(durationSeconds: Seconds, { silentTurns, rpm }: Settings): ScaleRow {
  const atSeconds = durationSeconds + (silentTurns * 60) / rpm;
  return { atSeconds, diameter: null, events: [{ kind: 'lead-out' }] };
}

/** The diameters that matter, at the time at which the program comes to them, if it does. */
function limitRows(spiral: ExecutedSpiral, settings: Settings): ScaleRow[] {
  const { preferredEndDiameter, innerDiameter, finishingDiameter } = settings;
  const limits = [
    ['preferred', preferredEndDiameter],
    ['limit', innerDiameter],
    ['finishing', finishingDiameter],
  ] as const;
  return limits.flatMap(([kind, diameter]) => {
    if (diameter === null) return [];
    const atSeconds = timeAtDiameter(spiral, diameter);
    return [{ atSeconds, diameter, events: [{ kind, isReached: atSeconds !== null }] }];
  });
}

/** In time; what the program does not come to is last, from the outside in. */
function inTime(one: ScaleRow, other: ScaleRow): number {
  const [at, then] = [one.atSeconds, other.atSeconds];
  if (at === null || then === null) {
    if (at === then) return (other.diameter ?? 0) - (one.diameter ?? 0);
    return at === null ? 1 : -1;
  }
  return at - then;
}

function merged(rows: readonly ScaleRow[]): ScaleRow[] {
  const told: ScaleRow[] = [];
  for (const row of rows) {
    const before = told.at(-1);
    const isSame =
      before !== undefined &&
      before.atSeconds !== null &&
      row.atSeconds !== null &&
      row.atSeconds - before.atSeconds < SAME;
    if (isSame) told[told.length - 1] = { ...before, events: [...before.events, ...row.events] };
    else told.push(row);
  }
  return told;
}
