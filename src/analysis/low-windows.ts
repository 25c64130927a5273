import type { Hertz } from '../units.js';

/** Frames of a window, about 0.35 s: it parts 5 Hz and lies within a quarter turn at 33⅓ rpm. */
export const WINDOW_FRAMES = 1024;
/** Where in a quarter its two windows are centred. */
export const WINDOW_CENTRES = [0.25, 0.75] as const;

/** The window itself. */
export const HANN = Float64Array.from(
  { length: WINDOW_FRAMES },
  (_, n) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / WINDOW_FRAMES),
);

/**
 * What the power of each bin weighs, from bin 0 to the last within the low band. Gives back what the
 * triangle of the decimation has taken of it, sinc⁴, and averages the windows.
 * @param rate of the decimated frames
 */
export function binGains(lowBand: Hertz, rate: Hertz): Float64Array {
  const last = Math.min(Math.floor((lowBand / rate) * WINDOW_FRAMES), WINDOW_FRAMES / 2);
  return Float64Array.from({ length: last + 1 }, (_, bin) => {
    const x = (Math.PI * bin) / WINDOW_FRAMES;
    return (bin === 0 ? 1 : (x / Math.sin(x)) ** 4) / WINDOW_CENTRES.length;
  });
}
