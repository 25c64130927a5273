import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres, MetresPerSecond, MetresPerTurn, Seconds } from '../units.js';

/** Groove speed V = 2π·r/T. */
export function grooveSpeed(radius: Metres, turnSeconds: Seconds): MetresPerSecond {
  return (2 * Math.PI * radius) / turnSeconds;
}

/**
 * Radius at the start of each planned quarter, and at the end of the last.
 * @param pitch m per turn, per planned quarter
 * @param lead index of the quarter that begins at `start`, the radius of the program's start
 * @param radius a row that becomes the result
 * @returns one more than there are quarters; negative for what no disc can hold
 */
export function spiralRadius(
  pitch: Float64Array,
  lead: number,
  start: Metres,
  radius: Float64Array = new Float64Array(pitch.length + 1),
): Float64Array {
  radius[lead] = start;
  for (let quarter = lead - 1; quarter >= 0; quarter--) {
    radius[quarter] = radius[quarter + 1]! + pitch[quarter]! / QUARTERS_PER_TURN;
  }
  for (let quarter = lead; quarter < pitch.length; quarter++) {
    radius[quarter + 1] = radius[quarter]! - pitch[quarter]! / QUARTERS_PER_TURN;
  }
  return radius;
}

/**
 * Advance over the last turn, A(t) = r(t − T) − r(t), at the start of each planned quarter and at
 * the end of the last; linear between.
 * @param before pitch before the planned quarters
 * @param advance a row that becomes the result, one longer than there are quarters
 */
export function turnAdvance(
  pitch: Float64Array,
  before: MetresPerTurn,
  advance: Float64Array = new Float64Array(pitch.length + 1),
): Float64Array {
  for (let node = 0; node < advance.length; node++) {
    const first = node - QUARTERS_PER_TURN;
    let sum = 0;
    for (let quarter = first; quarter < node; quarter++) {
      sum += quarter < 0 ? before : pitch[quarter]!;
    }
    advance[node] = sum / QUARTERS_PER_TURN;
  }
  return advance;
}
