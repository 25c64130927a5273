import type { InputError } from './errors.js';
import type { ForecastedFile } from './forecast-result.js';
import type { Request } from './forecast-side.js';
import { forecastSide } from './model/forecast-model.js';
import {
  type BakedSetting,
  type BakedSettings,
  bakedSettings,
  differingSetting,
} from './motion-file/baked-settings.js';
import { motionError } from './motion-file/motion-error.js';
import { readMotionFile } from './motion-file/read-motion-file.js';
import type { SavedMotion } from './motion-file/saved-motion.js';
import type { Settings } from './settings.js';
import { formatSpeed } from './units.js';

/**
 * The forecast of a side whose motion was saved: the same numbers as from its audio, but for what
 * the audio itself must be asked for, which is the speed error that a hot spot survives.
 * @throws InputError `motion-differs` if the motion was measured with other settings than it is
 *   asked for with
 */
export function forecastMotion(
  saved: SavedMotion,
  settings: Settings,
  request: Request,
): ForecastedFile {
  const { motion, source, truncated } = saved;
  const asked = bakedSettings(settings);
  const field = differingSetting(saved.settings, asked);
  if (field !== null) throw differs(source.path, field, saved.settings, asked);
  const { sampleRate, channels } = source;
  return {
    name: saved.name,
    sources: [source],
    settings,
    program: motion.program,
    forecast: forecastSide(motion, settings, {
      ...request,
      source: { sampleRate, channels, truncated },
    }),
    readFrom: 'motion',
    motion: request.keepMotion === true ? motion : null,
    audioSha256: saved.audioSha256,
  };
}

/**
 * The same for a file of saved motion.
 * @throws InputError if it cannot be read
 */
export async function forecastMotionFile(
  path: string,
  settings: Settings,
  request: Request,
): Promise<ForecastedFile> {
  return forecastMotion(await readMotionFile(path), settings, request);
}

function differs(
  path: string,
  field: BakedSetting,
  saved: BakedSettings,
  asked: BakedSettings,
): InputError {
  const found = `motion saved with ${field} ${valueText(field, saved)}`;
  const expected = `${valueText(field, asked)} as in the profile`;
  return motionError(path, {
    code: 'motion-differs',
    found,
    expected,
    remedy: 'forecast the sound again',
  });
}

function valueText(field: BakedSetting, settings: BakedSettings): string {
  const value = settings[field];
  if (field === 'referenceVelocity') return formatSpeed(settings.referenceVelocity);
  if (typeof value === 'number') return String(Number(value.toPrecision(7)));
  return value === null ? 'none' : String(value);
}
