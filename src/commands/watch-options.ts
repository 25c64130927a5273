import { UsageError } from '../errors.js';
import type { IntakeOptions } from './intake-options.js';

/** What the options of a watch amount to. */
export interface WatchOptions {
  readonly folder: string;
  readonly out: string;
  readonly settleSeconds: number;
}

/** Settle times that can be asked for, s. */
const SETTLE = { from: 0.1, to: 3600 };
/** Longer than a transfer that is alive pauses. Common practice, no published source. */
const DEFAULT_SETTLE = 5;

/**
 * The watch that the options ask for; null if they ask for none.
 * @param paths what is named besides
 * @throws UsageError for what is wrong together, or out of its range
 */
export function watchOptions(
  { watch, out, settle }: IntakeOptions,
  paths: readonly string[],
): WatchOptions | null {
  if (watch === undefined) {
    for (const [option, value] of [
      ['--out', out],
      ['--settle', settle],
    ] as const) {
      if (value !== undefined) throw new UsageError(`${option}: is for --watch; add that`);
    }
    return null;
  }
  if (watch === '') throw new UsageError('--watch: nothing given: a folder is expected');
  if (paths.length > 0) throw new UsageError('--watch: takes its folder and no further paths');
  if (out === undefined) throw new UsageError('--watch: needs a folder for its reports; add --out');
  const settleSeconds = settle ?? DEFAULT_SETTLE;
  if (settleSeconds < SETTLE.from || settleSeconds > SETTLE.to) {
    const expected = `expected ${SETTLE.from} to ${SETTLE.to} seconds`;
    throw new UsageError(`--settle: found ${settleSeconds}, ${expected}`);
  }
  return { folder: watch, out, settleSeconds };
}
