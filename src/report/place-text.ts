import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';

/**
 * A place in the program: `03:12.4, turn 106`, at half speed `03:12.4 (lathe 06:24.8), turn 106`.
 * Turns count from 0 at the first sample.
 */
export function placeText(atSeconds: Seconds, settings: Settings): string {
  const { rpm, speedFactor } = settings;
  const lathe = speedFactor === 1 ? '' : ` (lathe ${timeText(atSeconds / speedFactor)})`;
  if (atSeconds < 0) return `${timeText(atSeconds)}${lathe}, before the program`;
  return `${timeText(atSeconds)}${lathe}, turn ${turnAt(atSeconds, rpm)}`;
}

/** Minutes, seconds and tenths: `03:12.4`; rounded before it is split, so never `02:60.0`. */
export function timeText(seconds: Seconds): string {
  const tenths = Math.round(Math.abs(seconds) * 10);
  const minutes = String(Math.floor(tenths / 600)).padStart(2, '0');
  const rest = ((tenths % 600) / 10).toFixed(1).padStart(4, '0');
  return `${seconds < 0 && tenths > 0 ? '-' : ''}${minutes}:${rest}`;
}

/** The turn a moment lies in; a moment that rounding puts just before a turn begins is in it. */
function turnAt(seconds: Seconds, rpm: number): number {
  return Math.floor((seconds * rpm) / 60 + 1e-6);
}
