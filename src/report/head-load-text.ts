import type { HeadLoad } from '../model/forecast-types.js';
import { fixed } from './length-text.js';

/** What the head has to bear, as rms, and whose its limit is. */
export function headLoadText({ left, right }: HeadLoad): string {
  const one = `${loadText(left.oneSecond)} left and ${loadText(right.oneSecond)} right over 1 s`;
  const ten = `${loadText(left.tenSeconds)} and ${loadText(right.tenSeconds)} over 10 s`;
  return (
    `Head load: rms acceleration at most ${one}, ${ten}, in m/s²` +
    `${limitText(left.limitRatio, right.limitRatio)}. The head's thermal limit is its maker's.`
  );
}

function limitText(left: number | null, right: number | null): string {
  if (left === null || right === null) return '';
  return `: ${fixed(left, 2)} and ${fixed(right, 2)} times the mean square of headLimit`;
}

/** The root, to whole m/s² or, under 100 m/s², to a tenth. */
function loadText(meanSquare: number): string {
  const rms = Math.sqrt(meanSquare);
  return fixed(rms, rms < 100 ? 1 : 0);
}
