import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { timeText } from './place-text.js';
import type { ScaleEvent, ScaleRow } from './scale-rows.js';

/**
 * What to wait for at a row, and how long by the clock in the room: `next: 12:31.0 in 1:04`; after
 * the last hot spot the end. At half speed the wait is twice the program's. Empty from the end on, and
 * where a limit is passed: the minute before has told it.
 */
export function nextText(row: ScaleRow, rows: readonly ScaleRow[], settings: Settings): string {
  const { atSeconds } = row;
  if (atSeconds === null || row.events.some(isLimit)) return '';
  const later = rows.filter((each) => each.atSeconds !== null && each.atSeconds > atSeconds);
  const end = later.findIndex((each) => has(each, 'end'));
  if (end < 0) return '';
  const awaited = later.find((each) => has(each, 'spot')) ?? later[end];
  const then = awaited?.atSeconds ?? null;
  if (awaited === undefined || then === null) return '';
  const what = has(awaited, 'spot') ? 'next' : 'end';
  const { speedFactor } = settings;
  const clock = speedFactor === 1 ? '' : ' (lathe)';
  return `${what}: ${timeText(then)} in ${waitText((then - atSeconds) / speedFactor)}${clock}`;
}

function isLimit({ kind }: ScaleEvent): boolean {
  return kind === 'preferred' || kind === 'limit' || kind === 'finishing';
}

function has({ events }: ScaleRow, wanted: 'spot' | 'end'): boolean {
  return events.some(({ kind }) => kind === wanted);
}

/** Minutes and whole seconds, rounded down: rather a moment too early than too late. */
function waitText(seconds: Seconds): string {
  const whole = Math.floor(seconds + 1e-6);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
