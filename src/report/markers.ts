import type { ForecastedFile } from '../forecast-result.js';
import type { Finding, HotSpot, Severity } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import { type FindingContext, findingText } from './finding-text.js';
import { hotSpotText } from './hot-spot-text.js';
import { lengthText, type Units } from './length-text.js';

/** For what the words of findings and hot spots hold beyond ASCII. */
const ASCII_OF: Readonly<Record<string, string>> = { µ: 'u', '–': '-', '±': '+/-', '²': '2' };

/** Something to see on the timeline of the file. */
export interface Marker {
  readonly kind: 'finding' | 'hot-spot';
  /** Of the finding, or the cause of the hot spot. */
  readonly id: string;
  /** null for a hot spot, which is no finding. */
  readonly severity: Severity | null;
  /** File time, within the file. */
  readonly start: Seconds;
  /** The same as `start` for a point. */
  readonly end: Seconds;
  /** Short enough for a marker lane. */
  readonly label: string;
  readonly text: string;
  /** Why the house cuts it all the same. */
  readonly accepted: string | null;
}

/** Findings and hot spots in time order; at one time, findings first. */
export function markersOf(file: ForecastedFile, units: Units): Marker[] {
  const { forecast, settings } = file;
  const context = { settings, units, tracks: file.hand?.tracks };
  const findings = forecast.findings.map((finding) => findingMarker(finding, context));
  const spots = forecast.hotSpots.map((spot) => spotMarker(spot, context));
  return [...findings, ...spots]
    .map((marker) => withinFile(marker, forecast.durationSeconds))
    .sort((a, b) => a.start - b.start);
}

/** `00:03:12.400`; rounded before it is split, so never `00:00:60.000`. */
export function clockText(seconds: Seconds): string {
  const milliseconds = Math.round(seconds * 1000);
  const two = (count: number) => String(Math.floor(count)).padStart(2, '0');
  const minutes = `${two(milliseconds / 3_600_000)}:${two((milliseconds / 60_000) % 60)}`;
  const rest = String(milliseconds % 1000).padStart(3, '0');
  return `${minutes}:${two((milliseconds / 1000) % 60)}.${rest}`;
}

function findingMarker(finding: Finding, context: FindingContext): Marker {
  const { id, severity, atSeconds, untilSeconds, accepted } = finding;
  const { message, remedy } = findingText(finding, context);
  const scope = atSeconds === null ? ', file' : '';
  return {
    kind: 'finding',
    id,
    severity,
    start: atSeconds ?? 0,
    end: untilSeconds ?? atSeconds ?? 0,
    label: `${id} (${accepted === undefined ? severity : 'accepted'}${scope})`,
    text: ascii(`${message} ${remedy}`),
    accepted: accepted?.reason ?? null,
  };
}

function spotMarker(spot: HotSpot, { settings, units, tracks }: FindingContext): Marker {
  return {
    kind: 'hot-spot',
    id: spot.cause,
    severity: null,
    start: spot.atSeconds,
    end: spot.atSeconds,
    label: ascii(`land ${lengthText(spot.land, units)}`),
    text: ascii(hotSpotText(spot, settings, units, tracks)),
    accepted: null,
  };
}

/**
 * A timeline has no place before the file and none behind it, where the silent turns lie; the text
 * still says so.
 */
function withinFile(marker: Marker, duration: Seconds): Marker {
  const within = (seconds: Seconds) => Math.min(Math.max(seconds, 0), duration);
  return { ...marker, start: within(marker.start), end: within(marker.end) };
}

function ascii(text: string): string {
  return text.replace(/[µ–±²]/g, (character) => ASCII_OF[character] ?? character);
}
