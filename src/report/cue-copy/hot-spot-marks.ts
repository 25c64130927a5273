import type { ForecastedFile } from '../../forecast-result.js';
import type { Finding, HotSpot } from '../../model/forecast-types.js';
import type { Seconds } from '../../units.js';
import { findingText } from '../finding-text.js';
import { hotSpotText } from '../hot-spot-text.js';
import { lengthText, type Units } from '../length-text.js';
import type { CueMark } from './cue-mark.js';

/**
 * A forecast's hot spots and its findings that have a place, as marks in its file, in time order.
 * What lies in the silent turns before or after the program is marked at its first or last frame;
 * the note tells the true place. A side of several files has none.
 */
export function hotSpotMarks(file: ForecastedFile, units: Units = 'metric'): CueMark[] {
  const [source, ...others] = file.sources;
  if (source === undefined || others.length > 0) return [];
  const frameAt = (seconds: Seconds): number =>
    Math.min(Math.max(Math.round(seconds * source.sampleRate), 0), source.frames - 1);
  const marks = [
    ...file.forecast.hotSpots.map((spot) => hotSpotMark(spot, file, units, frameAt)),
    ...file.forecast.findings.flatMap((finding) => findingMarks(finding, file, units, frameAt)),
  ];
  return marks.sort((a, b) => a.frame - b.frame);
}

type FrameAt = (seconds: Seconds) => number;

function hotSpotMark(
  spot: HotSpot,
  { settings }: ForecastedFile,
  units: Units,
  frameAt: FrameAt,
): CueMark {
  return {
    frame: frameAt(spot.atSeconds),
    length: 0,
    label: `land ${lengthText(spot.land, units)}`,
    note: hotSpotText(spot, settings, units),
  };
}

/** None for a finding about the whole file. */
function findingMarks(
  finding: Finding,
  { settings }: ForecastedFile,
  units: Units,
  frameAt: FrameAt,
): CueMark[] {
  const { id, severity, atSeconds, untilSeconds, accepted } = finding;
  if (atSeconds === null) return [];
  const { message, remedy } = findingText(finding, { settings, units });
  const frame = frameAt(atSeconds);
  return [
    {
      frame,
      length: frameAt(untilSeconds ?? atSeconds) - frame,
      label: id.replaceAll('-', ' ') + (accepted === undefined ? '' : ' (accepted)'),
      note: `${severity}: ${message} ${remedy}`,
    },
  ];
}
