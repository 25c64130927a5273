import { kaiser } from './kaiser.js';

/** Taps of the interpolator: six frames on each side of the place. */
export const INTERPOLATION_TAPS = 12;
/** Phases of the table between two frames; between two phases the value is linear. */
const INTERPOLATION_PHASES = 64;
/** Phases between the places at which a peak is looked for: an eighth of a frame. */
const PEAK_STEP = 8;

const HALF = INTERPOLATION_TAPS / 2;
const BETA = 9.5;

/**
 * Taps that give the value at `fraction` of the way from one frame to the next, from the frames
 * −5 … +6 around the first: a sinc under a Kaiser window, exact to 1e-4 for content under 24.1 kHz
 * at the internal rate, whose images begin at 64.1 kHz only. They sum to 1.
 */
export function interpolationTaps(fraction: number): Float64Array {
  const taps = new Float64Array(INTERPOLATION_TAPS);
  for (let tap = 0; tap < INTERPOLATION_TAPS; tap++) {
    const distance = tap - (HALF - 1) - fraction;
    const sinc = distance === 0 ? 1 : Math.sin(Math.PI * distance) / (Math.PI * distance);
    taps[tap] = sinc * kaiser(distance / HALF, BETA);
  }
  const sum = taps.reduce((total, tap) => total + tap, 0);
  return taps.map((tap) => tap / sum);
}

/** Taps of every phase 0 … INTERPOLATION_PHASES, one row after another. */
export const INTERPOLATION_TABLE: Float64Array = (() => {
  const table = new Float64Array((INTERPOLATION_PHASES + 1) * INTERPOLATION_TAPS);
  for (let phase = 0; phase <= INTERPOLATION_PHASES; phase++) {
    table.set(interpolationTaps(phase / INTERPOLATION_PHASES), phase * INTERPOLATION_TAPS);
  }
  return table;
})();

/** A signal by its frames; silence where it has none. */
export type Frames = (frame: number) => number;

/** Value at a phase of the table after `frame`; phases under 0 and over a frame carry over. */
function valueAtPhase(signal: Frames, frame: number, phase: number): number {
  const whole = frame + Math.floor(phase / INTERPOLATION_PHASES);
  const row = phase - Math.floor(phase / INTERPOLATION_PHASES) * INTERPOLATION_PHASES;
  let value = 0;
  for (let tap = 0; tap < INTERPOLATION_TAPS; tap++) {
    value +=
      INTERPOLATION_TABLE[row * INTERPOLATION_TAPS + tap]! * signal(whole - (HALF - 1) + tap);
  }
  return value;
}

/** Value at any place, in frames. */
export function valueAt(signal: Frames, place: number): number {
  const frame = Math.floor(place);
  const phases = (place - frame) * INTERPOLATION_PHASES;
  const phase = Math.floor(phases);
  const before = valueAtPhase(signal, frame, phase);
  const after = valueAtPhase(signal, frame, phase + 1);
  return before + (phases - phase) * (after - before);
}

/** A maximum between frames. */
export interface Peak {
  readonly value: number;
  /** Where it is, in frames. */
  readonly place: number;
}

/**
 * The maximum next to a frame: uphill from it in eighths of a frame, at most one frame far, then
 * the vertex of the parabola through the last three values.
 */
export function peakNear(signal: Frames, frame: number): Peak {
  const at = (eighths: number): number => valueAtPhase(signal, frame, eighths * PEAK_STEP);
  let [best, ahead, behind] = [at(0), at(1), at(-1)];
  const step = ahead > behind ? 1 : -1;
  if (step < 0) [ahead, behind] = [behind, ahead];
  let eighths = 0;
  while (ahead > best && Math.abs(eighths) < PEAK_STEP) {
    eighths += step;
    [behind, best, ahead] = [best, ahead, at(eighths + step)];
  }
  const curvature = 2 * best - ahead - behind;
  const slope = ahead - behind;
  const offset = curvature > 0 ? slope / (2 * curvature) : 0;
  return {
    value: best + (offset * slope) / 4,
    place: frame + (eighths + step * offset) / PEAK_STEP,
  };
}

/** True where a frame is as high as the one before it and higher than the next. */
export function isLocalMaximum(signal: Frames, frame: number): boolean {
  const value = signal(frame);
  return value >= signal(frame - 1) && value > signal(frame + 1);
}

/** The signal's peaks between two places, in frames. */
export function* peaksBetween(signal: Frames, from: number, until: number): Generator<Peak> {
  for (let frame = Math.floor(from); frame <= until + 1; frame++) {
    if (!isLocalMaximum(signal, frame)) continue;
    const peak = peakNear(signal, frame);
    if (peak.place >= from && peak.place <= until) yield peak;
  }
}

/** Largest value of the signal between two places, in frames, both included. */
export function maximumBetween(signal: Frames, from: number, until: number): number {
  let largest = Math.max(valueAt(signal, from), valueAt(signal, until));
  for (let frame = Math.ceil(from); frame <= until; frame++) {
    largest = Math.max(largest, signal(frame));
  }
  for (const { value } of peaksBetween(signal, from, until)) largest = Math.max(largest, value);
  return largest;
}
