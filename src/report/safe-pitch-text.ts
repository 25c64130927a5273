import { linesPerInch, type MetresPerTurn, MICROMETRE, MIL } from '../units.js';
import type { Units } from './length-text.js';

/**
 * A pitch to dial in, never told tighter than it is: `300 LPI (84.7 µm)`, and where the control
 * moves in steps of a length, that first: `85 µm (298.8 LPI)`. In mil for who works in them.
 */
export function safePitchText(
  pitch: MetresPerTurn,
  step: MetresPerTurn | null,
  units: Units,
): string {
  const lines = `${flooredTo(linesPerInch(pitch), 0.1)} LPI`;
  const length =
    units === 'us'
      ? `${ceiledTo(pitch / MIL, 0.01)} mil`
      : `${ceiledTo(pitch / MICROMETRE, 0.1)} µm`;
  if (step !== null) return `${length} (${lines})`;
  return units === 'us' ? lines : `${lines} (${length})`;
}

/** What a division leaves in the last digits is no reason to go a step further. */
const SLACK = 1e-6;

function flooredTo(value: number, step: number): number {
  return Number((Math.floor(value / step + SLACK) * step).toPrecision(12));
}

function ceiledTo(value: number, step: number): number {
  return Number((Math.ceil(value / step - SLACK) * step).toPrecision(12));
}
