import type { Span } from '../analysis/motion.js';
import type { Finding } from '../model/forecast-types.js';
import type { HandTrack } from '../model/side-plan-input.js';
import type { Settings } from '../settings.js';
import type { FindingJson, SpanJson } from './finding-schema.js';
import { findingText } from './finding-text.js';
import {
  exactSeconds,
  roundAcceleration,
  roundDb,
  roundHz,
  roundRatio,
  roundSeconds,
  toMm,
  toUm,
} from './numbers.js';
import { trackPlace } from './track-place.js';

/** @param tracks of a side of several, so that a place is told in its track's time too */
export function findingToJson(
  finding: Finding,
  settings: Settings,
  tracks?: readonly HandTrack[],
): FindingJson {
  const { unit, write } = written(finding);
  const { message, remedy } = findingText(finding, { settings, units: 'metric', tracks });
  return {
    id: finding.id,
    severity: finding.severity,
    atSeconds: roundSeconds(finding.atSeconds),
    untilSeconds: roundSeconds(finding.untilSeconds),
    ...trackToJson(finding, tracks),
    value: write(finding.value),
    limit: write(finding.limit),
    unit,
    wall: finding.wall,
    frequencyHz: roundHz(finding.frequency),
    ...moreToJson(finding),
    message,
    remedy,
    accepted: finding.accepted?.reason ?? null,
  };
}

/** What only some findings have. */
function moreToJson({ count, longest, spans, acceleration }: Finding) {
  return {
    ...(count === undefined ? {} : { count }),
    ...(longest === undefined ? {} : { longest: spanToJson(longest) }),
    ...(spans === undefined ? {} : { spans: spans.map(spanToJson) }),
    ...(acceleration === undefined ? {} : { accelerationMPerS2: roundAcceleration(acceleration) }),
  };
}

function spanToJson({ fromSeconds, untilSeconds }: Span): SpanJson {
  return { atSeconds: exactSeconds(fromSeconds), untilSeconds: exactSeconds(untilSeconds) };
}

function trackToJson({ atSeconds }: Finding, tracks: readonly HandTrack[] | undefined) {
  if (tracks === undefined) return {};
  const place = atSeconds === null ? null : trackPlace(atSeconds, tracks);
  return { track: place?.name ?? null, trackSeconds: roundSeconds(place?.seconds ?? null) };
}

interface Written {
  readonly unit: FindingJson['unit'];
  readonly write: (value: number | null) => number | null;
}

function written({ id, unit }: Finding): Written {
  switch (unit) {
    case 'metre':
      // Diameters, and what is as wide, are told in the unit of diameters.
      return id === 'too-long' || id === 'off-standard'
        ? { unit: 'mm', write: toMm }
        : { unit: 'um', write: toUm };
    case 'ratio':
      return { unit: 'ratio', write: roundRatio };
    case 'decibel-full-scale':
      return { unit: 'dBFS', write: roundDb };
    case 'second':
      return { unit: 's', write: roundSeconds };
    case 'hertz':
      return { unit: 'Hz', write: roundHz };
    case 'count':
      return { unit: 'count', write: roundSeconds };
    case 'none':
      return { unit: null, write: () => null };
  }
}
