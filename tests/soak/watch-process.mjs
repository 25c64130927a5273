// @ts-check
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

/**
 * Little room for what is no longer used, so that it is collected early and what grows is kept.
 * Threads have their own limits.
 */
const HEAP = ['--max-old-space-size=24', '--max-semi-space-size=1'];
export const COMMAND = fileURLToPath(new URL('../../bin/furrow.js', import.meta.url));

/**
 * @typedef {{ type: string, path?: string, from?: string, code?: string }} Event
 * @typedef {object} WatchProcess
 * @property {Event[]} events
 * @property {() => number} residentBytes of the process, its threads included
 * @property {(signal: NodeJS.Signals) => Promise<{ code: number | null, stderr: string }>} end
 */

/**
 * Starts the built command on a folder.
 * @param {string} folder
 * @param {string} out
 * @param {readonly string[]} options
 * @param {(event: Event) => void} told
 * @param {NodeJS.ProcessEnv} env
 * @returns {Promise<WatchProcess>} once it has looked at what was there
 */
export async function startWatch(folder, out, options, told = () => {}, env = {}) {
  const command = [COMMAND, 'intake', '--no-discovery', '--watch', folder, '--out', out];
  const child = spawn(process.execPath, [...HEAP, ...command, ...options], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { NO_COLOR: '1', ...env },
  });
  /** @type {Event[]} */
  const events = [];
  let stderr = '';
  child.stderr.on('data', (text) => {
    stderr += text;
  });
  const lines = createInterface({ input: child.stdout });
  const closed = once(lines, 'close');
  const exited = once(child, 'exit');
  await new Promise((resolve, reject) => {
    lines.on('line', (line) => {
      const event = JSON.parse(line);
      events.push(event);
      told(event);
      if (event.type === 'caught-up') resolve(null);
    });
    exited.then(() => reject(new Error(`the watch ended at once: ${stderr}`)), reject);
  });
  return {
    events,
    residentBytes: () => residentOf(child.pid),
    end: async (signal) => {
      child.kill(signal);
      const [code] = await exited;
      await closed;
      return { code, stderr };
    },
  };
}

/**
 * Source: proc(5), VmRSS, in units of 1024 bytes.
 * @param {number | undefined} pid
 */
function residentOf(pid) {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    return 1024 * Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1] ?? Number.NaN);
  } catch {
    return Number.NaN;
  }
}
