import type { Settings } from '../settings.js';
import type { Stereo } from './stereo.js';

/**
 * k: the 45° peak velocity of one channel that is at full scale at 1 kHz,
 * referenceVelocity/√2 · 10^(−referenceDbfs/20), m/s: an in-phase sine of referenceDbfs then cuts
 * the lateral referenceVelocity.
 */
export function fullScaleVelocity(settings: Settings): number {
  return (settings.referenceVelocity / Math.SQRT2) * 10 ** (-settings.referenceDbfs / 20);
}

/** How the lathe's wiring takes the channels: which goes where, and by how much. */
export interface Wiring {
  readonly swap: boolean;
  readonly leftGain: number;
  readonly rightGain: number;
}

/** Polarity on both channels, half the balance up on the left and half down on the right. */
export function wiringOf(settings: Settings): Wiring {
  const half = 10 ** (settings.channelBalanceDb / 40);
  return {
    swap: settings.swapChannels,
    leftGain: settings.polarity * half,
    rightGain: settings.polarity / half,
  };
}

/** The channels as the cutter gets them. */
export function wire(program: Stereo, wiring: Wiring): Stereo {
  const [left, right] = wiring.swap ? [program.right, program.left] : [program.left, program.right];
  return {
    left: left.map((value) => value * wiring.leftGain),
    right: right.map((value) => value * wiring.rightGain),
  };
}
