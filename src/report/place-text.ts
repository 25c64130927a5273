import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';

/** From this on a stretch is told by both its ends: less is one tenth of a second, as shown. */
const LEAST_SPAN: Seconds = 0.1;

/**
 * A place in the program: `03:12.4, turn 106`, at half speed `03:12.4 (lathe 06:24.8), turn 106`.
 * Turns count from 0 at the first sample.
 */
export function placeText(atSeconds: Seconds, settings: Settings): string {
  return spanText(atSeconds, null, settings);
}

/**
 * A stretch of the program: `03:12.4–03:14.0, turn 106`, the turn being the one it begins in; where
 * it is shorter than what is shown, or has no end, its beginning as a place.
 */
export function spanText(
  atSeconds: Seconds,
  untilSeconds: Seconds | null,
  { rpm, speedFactor }: Settings,
): string {
  const lasts = untilSeconds !== null && untilSeconds - atSeconds >= LEAST_SPAN;
  const ends = lasts ? [atSeconds, untilSeconds] : [atSeconds];
  const times = (factor: number) => ends.map((end) => timeText(end / factor)).join('–');
  const lathe = speedFactor === 1 ? '' : ` (lathe ${times(speedFactor)})`;
  const turn = atSeconds < 0 ? 'before the program' : `turn ${turnAt(atSeconds, rpm)}`;
  return `${times(1)}${lathe}, ${turn}`;
}

/** Minutes, seconds and tenths: `03:12.4`; rounded before it is split, so never `02:60.0`. */
export function timeText(seconds: Seconds): string {
  const tenths = Math.round(Math.abs(seconds) * 10);
  const minutes = String(Math.floor(tenths / 600)).padStart(2, '0');
  const rest = ((tenths % 600) / 10).toFixed(1).padStart(4, '0');
  return `${seconds < 0 && tenths > 0 ? '-' : ''}${minutes}:${rest}`;
}

/** The turn a moment lies in; a moment that rounding puts just before a turn begins is in it. */
export function turnAt(seconds: Seconds, rpm: number): number {
  return Math.floor((seconds * rpm) / 60 + 1e-6);
}
