import type { ForecastedFile } from '../forecast-result.js';
import { lengthText, shareText, type Units } from './length-text.js';
import { safeText } from './safe-text.js';

/** The last digit that is told of a share: less of it is no gain to move a track for. */
const TOLD = 1e-4;

/** The running order that would bend less, in a sentence; empty where none was looked for. */
export function orderText({ forecast, settings }: ForecastedFile, units: Units): string {
  const { order, tracks = [] } = forecast;
  if (order === undefined) return '';
  if (order === null) return 'Running order: fewer than two tracks may move.';
  const tip = `the ${lengthText(settings.playbackTip, units)} tip`;
  const before = shareText(order.bendShareBefore);
  if (order.bendShareBefore < TOLD) {
    const little =
      order.bendShareBefore === 0 ? 'nothing' : `less than ${shareText(TOLD)} of the time`;
    return `Running order: ${little} bends under ${tip} in this one.`;
  }
  if (order.bendShareBefore - order.bendShare < TOLD) {
    const known = order.isExhaustive ? 'no other' : 'none that was tried';
    return `Running order: ${known} bends less under ${tip} than this one, ${before} of the time.`;
  }
  const names = order.order.map((at) => `${at + 1} ${safeText(tracks[at]?.name ?? '')}`).join(', ');
  return (
    `Running order with less bent under ${tip}, ${shareText(order.bendShare)} instead of ${before} of the time: ` +
    `${names}. Nothing was moved.`
  );
}
