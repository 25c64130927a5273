import { LEAD_OUT_ROOM } from '../finding-details.js';
import type { Finding } from '../forecast-types.js';

/**
 * Whether a finding is about the whole side: it has no place, or one that is only its first (the
 * first clip or gap, where the spiral passes its limit, the end) and moves although the same is meant.
 */
export function isAboutWholeSide({ id, atSeconds, detail }: Finding): boolean {
  if (atSeconds === null || detail === LEAD_OUT_ROOM) return true;
  return id === 'clipped' || id === 'too-long' || id === 'gap-inside';
}
