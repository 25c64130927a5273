import { jsonText } from '../report/json-text.js';
import type { CuePlace } from './cue-places.js';
import { SHEET_FORMAT } from './sheet-schema.js';

/**
 * A sheet of one side whose tracks are a file's stretches between its marks, to the sample and
 * without gaps, so that the side is the file. What lies before the first mark is a track too, called
 * `start`; a track without a label is called after its number.
 * @param places in order of time, at least one
 * @param frames of the file
 */
export function sheetFromCues(
  file: string,
  side: string,
  places: readonly CuePlace[],
  frames: number,
): string {
  const first = places[0]?.sample ?? 0;
  const starts = first === 0 ? places : [{ sample: 0, label: 'start' }, ...places];
  const tracks = starts.map(({ sample, label }, index) => ({
    name: label.trim() === '' ? `track ${index + 1}` : label,
    file,
    ...(sample === 0 ? {} : { fromSample: sample }),
    ...(starts[index + 1] === undefined ? {} : { untilSample: starts[index + 1]?.sample }),
  }));
  const lines = tracks.map((track) => `      ${jsonText(track)}`).join(',\n');
  return `// Tracks of a continuous file of ${frames} samples, split at its own marks: without gaps,
// trims and fades the side is the file. Files are seen from where this sheet lies.
{
  "format": ${jsonText(SHEET_FORMAT)},
  "sides": [
    { "name": ${jsonText(side)}, "tracks": [
${lines}
    ] }
  ]
}
`;
}
