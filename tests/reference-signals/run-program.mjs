// @ts-check
import { spawnSync } from 'node:child_process';

/**
 * Runs a program to its end.
 * @param {string} program name on the PATH
 * @param {readonly string[]} args
 * @param {Uint8Array} [input] what it reads on its standard input
 * @returns {{ stdout: Buffer, stderr: string }} throws if it is missing or fails
 */
export function runProgram(program, args, input = new Uint8Array()) {
  const done = spawnSync(program, args, { input, maxBuffer: 2 ** 28 });
  if (done.error !== undefined) throw done.error;
  const stderr = done.stderr.toString('utf8');
  if (done.status !== 0) throw new Error(`${program} ended with ${done.status}: ${stderr}`);
  return { stdout: done.stdout, stderr };
}

/** @param {ArrayLike<number>} values */
export function doubleBytes(values) {
  return new Uint8Array(Float64Array.from(values).buffer);
}

/** @param {Uint8Array} bytes raw 64-bit floats of this machine's order */
export function doublesOf(bytes) {
  return new Float64Array(Uint8Array.from(bytes).buffer);
}
