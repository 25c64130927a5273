import type { ForecastedFile } from '../forecast-result.js';
import type { RunningOrder } from '../model/forecast-types.js';
import { lengthText, shareText, type Units } from './length-text.js';
import { safeText } from './safe-text.js';

/** The running order that would bend less, in a sentence; empty where none was looked for. */
export function orderText({ forecast, settings }: ForecastedFile, units: Units): string {
  const { order, tracks = [] } = forecast;
  if (order === undefined) return '';
  if (order === null) return 'Running order: fewer than two tracks may move.';
  const tip = `the ${lengthText(settings.playbackTip, units)} tip`;
  if (order.bendShareBefore === 0) return `Running order: nothing bends under ${tip} in this one.`;
  if (order.bendShare >= order.bendShareBefore) {
    const [before] = shareTexts(order);
    const known = order.isExhaustive ? 'no other' : 'none that was tried';
    return `Running order: ${known} bends less under ${tip} than this one, ${before} of the time.`;
  }
  const [before, after] = shareTexts(order);
  const names = order.order.map((at) => `${at + 1} ${safeText(tracks[at]?.name ?? '')}`).join(', ');
  return (
    `Running order with less bent under ${tip}, ${after} instead of ${before} of the time: ` +
    `${names}. Nothing was moved.`
  );
}

/** Both shares, with as many digits as it takes to tell them apart. */
function shareTexts({ bendShareBefore, bendShare }: RunningOrder): [string, string] {
  for (let more = 0; more < 4; more++) {
    const [before, after] = [shareText(bendShareBefore, more), shareText(bendShare, more)];
    if (before !== after) return [before, after];
  }
  return [shareText(bendShareBefore), shareText(bendShare)];
}
