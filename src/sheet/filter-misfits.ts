import type { Settings } from '../settings.js';
import type { Misfit } from './hand-settings.js';
import type { CutTrack } from './lay-tracks.js';

/** Tracks whose elliptical filter has a corner that it cannot be set to, as the profile's rules say. */
export function filterMisfits(
  cut: readonly CutTrack[],
  { ellipticalSteps }: Settings,
): readonly Misfit[] {
  return cut.flatMap(({ track: { ellipticalHz: corner } }, track) => {
    if (typeof corner !== 'number' || ellipticalSteps === null) return [];
    if (ellipticalSteps.includes(corner)) return [];
    const text = `found ${corner}, expected one of ellipticalSteps, ${ellipticalSteps.join(', ')}`;
    return [{ track, path: ['ellipticalHz'], text }];
  });
}
