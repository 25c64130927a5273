// @ts-check
import { timeProcess } from './time-process.mjs';

/**
 * Runs commands in turns, so that what else the machine does meets all of them alike; the first
 * round warms the caches and does not count.
 * @param {number} rounds
 * @param {readonly (readonly [name: string, program: string, ...args: string[]])[]} commands
 * @returns {Promise<{ name: string, seconds: number, peakBytes: number }[]>} per command its
 *   fastest round and its largest peak; NaN where the program is missing
 */
export async function bestOf(rounds, commands) {
  const best = commands.map(([name]) => ({
    name,
    seconds: Number.POSITIVE_INFINITY,
    peakBytes: 0,
  }));
  for (let round = 0; round <= rounds; round++) {
    for (const [index, [, program, ...args]] of commands.entries()) {
      const { seconds, peakBytes } = await timeProcess(program, args);
      const row = best[index];
      if (row === undefined || round === 0) continue;
      row.seconds = Math.min(row.seconds, seconds);
      row.peakBytes = Math.max(row.peakBytes, peakBytes);
    }
  }
  return best;
}
