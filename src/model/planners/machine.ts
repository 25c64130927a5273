import { QUARTERS_PER_TURN } from '../../analysis/motion.js';
import { landTolerance, type PlannedSide } from '../planned-side.js';
import { closeLate, openEarly } from '../slew.js';
import { windowMaximum } from './window-maximum.js';

/**
 * The pitch of an automation that sees only the two channels' envelopes, a quarter turn at a time:
 * p_j = max(base, N + gain·g·(max outward over j … j + advance + max inward over j − hold … j)),
 * N = landMin + tolerances + the largest h(t) + h(t − T) over quarters j … j + advance; then its
 * slews, or the profile's where it has none.
 * @param facing h(t) + h(t − T) at the quarters' ends, m
 * @param pitch becomes what is wanted, per planned quarter, before pitchMax, m per turn
 */
export function machineAutomation(
  side: PlannedSide,
  facing: Float64Array,
  gain: number,
  pitch: Float64Array,
): void {
  const { settings, basePitch, heard, count } = side;
  const { machine, landMin } = settings;
  const advance = Math.round(QUARTERS_PER_TURN * machine.advanceTurns);
  const kept = landMin + landTolerance(settings);
  pitch.set(basePitch);
  for (let quarter = 0; quarter < count; quarter++) {
    // The ends of quarter j are nodes j and j + 1.
    const widest = windowMaximum(facing, quarter, quarter + advance + 1);
    const wanted = kept + widest + machine.gain * gain * heard[quarter]!;
    if (wanted > pitch[quarter]!) pitch[quarter] = wanted;
  }
  openEarly(pitch, machine.openSlew ?? settings.pitchOpenSlew);
  closeLate(pitch, machine.closeSlew ?? settings.pitchCloseSlew);
}
