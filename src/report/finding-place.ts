import type { Finding } from '../model/forecast-types.js';
import type { HandTrack } from '../model/side-plan-input.js';
import type { Settings } from '../settings.js';
import { frequencyText } from './length-text.js';
import { spanText } from './place-text.js';
import { trackPlaceText } from './track-place.js';

/**
 * Where a finding is to be looked for: `12:31.0–12:33.2, turn 417, both walls, 48 Hz`, as far as it
 * is known; empty for the whole file. At half speed both clocks are told, on a side of several tracks
 * the track and its own time.
 */
export function findingPlace(
  finding: Finding,
  settings: Settings,
  tracks?: readonly HandTrack[],
): string {
  const { atSeconds, untilSeconds, frequency } = finding;
  const parts = [
    atSeconds === null ? '' : spanText(atSeconds, untilSeconds, settings),
    atSeconds === null ? '' : trackPlaceText(atSeconds, tracks),
    wallsText(finding),
    frequency === null || frequency <= 0 ? '' : frequencyText(frequency),
  ];
  return parts.filter((part) => part !== '').join(', ');
}

/** What is said of a file is said of its channels, in the words of the finding itself. */
function wallsText({ id, wall }: Finding): string {
  if (wall === null || id === 'dc-offset' || id === 'one-sided' || id === 'jump') return '';
  return wall === 'both' ? 'both walls' : `${wall} wall`;
}
