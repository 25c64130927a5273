import type { ForecastedFile } from '../forecast-result.js';
import { csvText } from './csv.js';
import type { Units } from './length-text.js';
import { clockText, type Marker, markersOf } from './markers.js';
import { roundSeconds } from './numbers.js';

/**
 * Findings and hot spots of a side in time order, for the timeline of a workstation: start and end
 * in the file's own time as h:mm:ss.mmm, as seconds and as the sample it is at. What is wrong with
 * the whole file stands at its start. Nothing is merged. Own words are ASCII, since who reads a
 * list of markers may take any encoding for granted; there is no byte order mark.
 */
export function markersCsv(file: ForecastedFile, units: Units = 'metric'): string {
  const rate = sampleRateOf(file);
  const sample = (seconds: number) => (rate === null ? null : Math.round(seconds * rate));
  return csvText<Marker>(
    {
      label: ({ label }) => label,
      start: ({ start }) => clockText(start),
      end: ({ end }) => clockText(end),
      startSeconds: ({ start }) => roundSeconds(start),
      endSeconds: ({ end }) => roundSeconds(end),
      startSample: ({ start }) => sample(start),
      endSample: ({ end }) => sample(end),
      kind: ({ kind }) => kind,
      id: ({ id }) => id,
      severity: ({ severity }) => severity,
      text: ({ text }) => text,
      accepted: ({ accepted }) => accepted,
    },
    markersOf(file, units),
  );
}

/** null where a side is made of files of different rates: it has no samples of its own to count. */
function sampleRateOf({ sources }: ForecastedFile): number | null {
  const [first] = sources;
  if (first === undefined) return null;
  return sources.every(({ sampleRate }) => sampleRate === first.sampleRate)
    ? first.sampleRate
    : null;
}
