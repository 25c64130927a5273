import {
  type FoundJump,
  LEAST_JUMP,
  type MotionSummary,
  QUARTERS_PER_TURN,
} from '../../analysis/motion.js';
import type { Settings } from '../../settings.js';
import type { Seconds } from '../../units.js';
import type { Finding, SourceFacts } from '../forecast-types.js';
import { finding } from './finding.js';

/** How far a jump's acceleration reaches: the filters are some frames long on either side. */
const REACH: Seconds = 0.001;

/**
 * `jump`: single samples that the sound around them does not explain, the largest of them, each with
 * the largest acceleration that the head is asked for in its quarter turn at level 0 dB. Both
 * channels at one place are one finding. `count` only where there are more than are told.
 */
export function jumpFindings(
  motion: MotionSummary,
  settings: Settings,
  { channels }: SourceFacts,
): Finding[] {
  const { jumps, identicalChannels } = motion.program;
  const { largest } = jumps;
  const isMono = channels === 1 || identicalChannels;
  const count = isMono ? jumps.count / 2 : jumps.count;
  const places = new Map<Seconds, FoundJump[]>();
  for (const jump of largest) {
    places.set(jump.atSeconds, [...(places.get(jump.atSeconds) ?? []), jump]);
  }
  return [...places].map(([atSeconds, [worst, ...others]]) =>
    finding('jump', 'caution', {
      atSeconds,
      value: levelDb(worst!.size),
      limit: levelDb(LEAST_JUMP),
      unit: 'decibel-full-scale',
      wall: others.length > 0 ? 'both' : worst!.channel,
      ...(jumps.count > largest.length ? { count } : {}),
      acceleration: Math.max(
        ...[worst!, ...others].map((jump) => accelerationAt(motion, settings, jump)),
      ),
    }),
  );
}

/** Of the wall that the channel is wired to. */
function accelerationAt(
  motion: MotionSummary,
  { swapChannels }: Settings,
  { atSeconds, channel }: FoundJump,
): number {
  const isLeft = (channel === 'left') !== swapChannels;
  const { accelerationPeak } = isLeft ? motion.left : motion.right;
  const peakAt = (seconds: Seconds): number =>
    accelerationPeak[Math.max(0, Math.floor((seconds * QUARTERS_PER_TURN) / motion.turnSeconds))]!;
  return Math.max(peakAt(atSeconds - REACH), peakAt(atSeconds + REACH));
}

function levelDb(amplitude: number): number {
  return 20 * Math.log10(amplitude);
}
