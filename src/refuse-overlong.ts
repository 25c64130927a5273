import { clockOf } from './analysis/parts.js';
import type { SampleFormat } from './analysis/sample-format.js';
import { InputError } from './errors.js';
import type { Settings } from './settings.js';

/**
 * Six times the turns that a 12-inch side has at the finest pitch there is, some 30 µm: eight hours
 * at 33⅓, so that an archive of 4.5 GB passes at any common rate. A few kilobytes can hold days of
 * silence, and all that is measured is kept a quarter turn.
 */
const MOST_TURNS = 2 ** 14;

/**
 * A program that is no side of a disc is not measured.
 * @param path as it is to be shown
 * @throws InputError `overlong`
 */
export function refuseOverlong(
  path: string,
  format: SampleFormat,
  frames: number,
  settings: Settings,
): void {
  const { turnSeconds } = clockOf(format, settings);
  const turns = frames / format.sampleRate / turnSeconds;
  if (turns <= MOST_TURNS) return;
  const found = `${Math.ceil(turns)} turns of sound`;
  const message = `${path}: found ${found}, expected at most ${MOST_TURNS}, more than a side has`;
  throw new InputError(path, 'overlong', `${message}; cut the file into sides`);
}
