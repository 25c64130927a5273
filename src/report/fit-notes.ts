import type { LeftOut, SideFit } from '../fit/fit-result.js';
import { COMMON_CORNERS } from '../fit/local-ladders.js';
import { RAMP_SECONDS } from '../fit/sound-edit.js';
import { fixed } from './length-text.js';

/** What stands over the remedies. */
export const REMEDIES_TITLE = `Remedies, each by itself; changes of the sound come and go within ${fixed(1000 * RAMP_SECONDS, 0)} ms`;

/** What has to be known of the remedies that were tried, and why others were not; a sentence each. */
export function fitNotes(fit: SideFit): string[] {
  return [cornersText(fit), ...fit.leftOut.map((each) => LEFT_OUT[each])].filter(
    (note) => note !== '',
  );
}

/** Which corners were tried where the profile does not say what the filter has. */
function cornersText({ settings, remedies }: SideFit): string {
  const isTried = remedies.some(({ remedy }) => 'corner' in remedy);
  if (!isTried || settings.ellipticalSteps !== null) return '';
  const corners = COMMON_CORNERS.join(', ');
  return `The profile has no ellipticalSteps: corners of common practice were tried, ${corners} Hz.`;
}

const LEFT_OUT: Readonly<Record<LeftOut, string>> = {
  'no-sound':
    'Not tried, since the motion was saved and there is no sound: filters, level in named seconds, ' +
    'polarity, another speed.',
  'own-filters':
    'Not tried, since tracks have elliptical filters of their own: one for the whole side.',
  'needless-ellipticals':
    'Milder elliptical filters for the whole side were not tried, since the strongest gain nothing.',
  'long-passage': 'Passages of more than two minutes are treated with the whole side only.',
  'many-passages': 'Of many passages the eight worst are treated one by one.',
};
