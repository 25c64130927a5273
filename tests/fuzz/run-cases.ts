import type { FuzzCase } from './fuzz-case.js';
import { tryCase } from './try-case.js';

/** What one file may take, on whatever machine it is. */
export const MOST_CPU_SECONDS = 2;

/** What came of one file. */
export interface Tried {
  /** `read`, a code, `usage`; `bug` where something does not hold. */
  readonly outcome: string;
  /** What does not hold, and where. */
  readonly bug?: string;
  readonly cpuSeconds: number;
}

/** Tries a file and takes its time. Never rejects. */
export async function timed(one: FuzzCase, folder: string, forecast: boolean): Promise<Tried> {
  const begun = process.cpuUsage();
  const tried = await tryOne(one, folder, forecast);
  const { user, system } = process.cpuUsage(begun);
  const cpuSeconds = (user + system) / 1e6;
  if (cpuSeconds <= MOST_CPU_SECONDS) return { ...tried, cpuSeconds };
  return { outcome: 'bug', bug: `${cpuSeconds} s of CPU time`, cpuSeconds };
}

async function tryOne(
  one: FuzzCase,
  folder: string,
  forecast: boolean,
): Promise<Omit<Tried, 'cpuSeconds'>> {
  try {
    return { outcome: await tryCase(one, folder, forecast) };
  } catch (error) {
    const bug = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { outcome: 'bug', bug };
  }
}
