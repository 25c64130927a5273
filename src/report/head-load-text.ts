import type { HeadLoad } from '../model/forecast-types.js';
import { fixed } from './length-text.js';

/** What the head has to bear, in the unit of the profile's headLimit, and whose its limit is. */
export function headLoadText({ left, right }: HeadLoad): string {
  const one = `${loadText(left.oneSecond)} left and ${loadText(right.oneSecond)} right over 1 s`;
  const ten = `${loadText(left.tenSeconds)} and ${loadText(right.tenSeconds)} over 10 s`;
  return (
    `Head load: mean-square acceleration at most ${one}, ${ten}, in (m/s²)²` +
    `${limitText(left.limitRatio, right.limitRatio)}. The head's thermal limit is its maker's.`
  );
}

function limitText(left: number | null, right: number | null): string {
  if (left === null || right === null) return '';
  return `: ${fixed(left, 2)} and ${fixed(right, 2)} times headLimit`;
}

/** Three digits and a power of ten, such as 2.13e6; 0 in silence. */
function loadText(meanSquare: number): string {
  return meanSquare === 0 ? '0' : meanSquare.toExponential(2).replace('e+', 'e');
}
