// @ts-check
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';

const SAMPLE_MILLISECONDS = 5;

/**
 * Runs a program with its output thrown away.
 * @param {string} program
 * @param {readonly string[]} args
 * @returns {Promise<{ seconds: number, peakBytes: number }>} from spawn to exit, and the largest
 *   resident set; both NaN if there is no such program. Throws if it fails.
 */
export async function timeProcess(program, args) {
  const started = performance.now();
  const child = spawn(program, args, { stdio: 'ignore' });
  let peakBytes = Number.NaN;
  // VmHWM only grows, so the last look before the end is the peak but for the last milliseconds.
  const sampler = setInterval(() => {
    peakBytes = peakResident(child.pid) ?? peakBytes;
  }, SAMPLE_MILLISECONDS);
  try {
    const [code] = await once(child, 'exit');
    const seconds = (performance.now() - started) / 1000;
    if (code !== 0) throw new Error(`${program} ${args.join(' ')} ended with ${code}`);
    return { seconds, peakBytes };
  } catch (problem) {
    if (child.pid === undefined) return { seconds: Number.NaN, peakBytes: Number.NaN };
    throw problem;
  } finally {
    clearInterval(sampler);
  }
}

/**
 * Source: proc(5), VmHWM, in units of 1024 bytes.
 * @param {number | undefined} pid
 * @returns {number | undefined} bytes; undefined once it has ended, or without /proc
 */
function peakResident(pid) {
  try {
    const [, kib] = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
    return kib === undefined ? undefined : Number(kib) * 1024;
  } catch {
    return undefined;
  }
}
