// @ts-check
import { fileURLToPath } from 'node:url';

const COMMAND = fileURLToPath(new URL('../../bin/furrow.js', import.meta.url));

/** @param {readonly string[]} args @returns {[string, ...string[]]} */
export function furrow(...args) {
  return [process.execPath, COMMAND, ...args];
}

/**
 * A general-purpose look at a file: the replay curve and levels.
 * @param {string} path
 * @returns {[string, ...string[]]}
 */
export function soxMeter(path) {
  return ['sox', path, '-n', 'riaa', 'stats'];
}

/**
 * Another: loudness and true peak.
 * @param {string} path
 * @returns {[string, ...string[]]}
 */
export function ffmpegMeter(path) {
  const input = ['-hide_banner', '-nostdin', '-nostats', '-loglevel', 'error', '-i', path];
  return ['ffmpeg', ...input, '-af', 'ebur128=peak=true', '-f', 'null', '-'];
}
