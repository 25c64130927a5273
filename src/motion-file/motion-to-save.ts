import type { ForecastedFile } from '../forecast-result.js';
import { bakedSettings } from './baked-settings.js';
import type { SavedMotion } from './saved-motion.js';

/**
 * What is to be saved of a side's forecast.
 * @param file forecast with `keepMotion`, of one source
 */
export function motionToSave(file: ForecastedFile): SavedMotion {
  const { name, sources, settings, motion, audioSha256, forecast } = file;
  const [source, ...others] = sources;
  if (motion === null || source === undefined || others.length > 0) {
    throw new RangeError(`${name}: a forecast of one source that kept its motion is expected`);
  }
  // The finding is there exactly where the file says so; it has no other cause.
  const truncated = forecast.findings.some(({ id }) => id === 'truncated');
  return { name, source, truncated, settings: bakedSettings(settings), audioSha256, motion };
}
