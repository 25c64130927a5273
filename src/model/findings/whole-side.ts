import type { Finding } from '../forecast-types.js';

/**
 * Whether a finding is about the whole side: it has no place, or one that is only its first (the
 * first clip, where the spiral passes its limit) and moves although the same is meant.
 */
export function isAboutWholeSide({ id, atSeconds }: Pick<Finding, 'id' | 'atSeconds'>): boolean {
  return atSeconds === null || id === 'clipped' || id === 'too-long';
}
