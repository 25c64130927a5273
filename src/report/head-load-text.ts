import type { HeadLoad } from '../model/forecast-types.js';
import { fixed } from './length-text.js';

/** What the head has to bear, as rms, and whose its limit is. */
export function headLoadText({ left, right }: HeadLoad): string {
  const one = `L ${loadText(left.oneSecond)}, R ${loadText(right.oneSecond)} m/s² rms over 1 s`;
  const ten = `L ${loadText(left.tenSeconds)}, R ${loadText(right.tenSeconds)} over 10 s`;
  const limit = limitText(left.limitRatio, right.limitRatio);
  return `Head load ${one}; ${ten}${limit}; its limit is its maker's.`;
}

function limitText(left: number | null, right: number | null): string {
  if (left === null || right === null) return '';
  return `; ${fixed(left, 2)} and ${fixed(right, 2)} times the mean square of headLimit`;
}

/** The root, to whole m/s² or, under 100 m/s², to a tenth. */
function loadText(meanSquare: number): string {
  const rms = Math.sqrt(meanSquare);
  return fixed(rms, rms < 100 ? 1 : 0);
}
