// @ts-check
import { frequencyResponse, logFrequencies } from './frequency-response.mjs';
import { doubleBytes, doublesOf, runProgram } from './run-program.mjs';

/** Half a second: the slowest time constant of the replay curve, 3180 µs, 157 times. */
const SECONDS = 0.5;
/** Of the impulse, so far under full scale that no program's integer stage clips. */
const IMPULSE = 0.5;

/** @typedef {{ rate: number, hz: number[], db: number[], degrees: number[] }} ReplayCurve */

/**
 * Replay curve of `sox riaa`, from its impulse response.
 * @param {number} rate Hz
 * @returns {ReplayCurve}
 */
export function soxReplayCurve(rate) {
  const raw = ['-t', 'f64', '-r', `${rate}`, '-c', '1', '-'];
  return replayCurve(rate, 20_000, (impulse) =>
    runProgram('sox', ['-D', '-V1', ...raw, '-t', 'f64', '-', 'riaa'], impulse),
  );
}

/**
 * Replay curve of ffmpeg's aemphasis filter, from its impulse response, to 1 kHz: above 2 kHz it
 * leaves the formula by more than this comparison could use.
 * @param {number} rate Hz
 * @returns {ReplayCurve}
 */
export function ffmpegReplayCurve(rate) {
  const raw = ['-f', 'f64le', '-ar', `${rate}`, '-ac', '1'];
  const filter = ['-af', 'aemphasis=mode=reproduction:type=riaa'];
  const quiet = ['-hide_banner', '-nostdin', '-loglevel', 'error'];
  return replayCurve(rate, 1000, (impulse) =>
    runProgram('ffmpeg', [...quiet, ...raw, '-i', 'pipe:0', ...filter, ...raw, 'pipe:1'], impulse),
  );
}

/**
 * @param {number} rate
 * @param {number} highest Hz
 * @param {(impulse: Uint8Array) => { stdout: Uint8Array }} run
 * @returns {ReplayCurve}
 */
function replayCurve(rate, highest, run) {
  const impulse = new Float64Array(rate * SECONDS);
  impulse[0] = IMPULSE;
  const response = doublesOf(run(doubleBytes(impulse)).stdout).map((value) => value / IMPULSE);
  const hz = logFrequencies(20, highest, 64);
  const { db, degrees } = frequencyResponse(response, hz, rate);
  const at1k = db[hz.indexOf(1000)] ?? Number.NaN;
  return {
    rate,
    hz,
    db: db.map((value) => rounded(value - at1k)),
    degrees: degrees.map(rounded),
  };
}

/** @param {number} value to 1e-5, a hundredth of what is compared */
function rounded(value) {
  return Math.round(value * 1e5) / 1e5;
}
