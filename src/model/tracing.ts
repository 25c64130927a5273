import type { Metres, MetresPerSecond } from '../units.js';
import { grooveSpeed } from './disc.js';
import type { Plan } from './plan.js';
import type { PlannedSide } from './planned-side.js';

/** How steep and how tightly bent the walls of a plan are, per planned quarter; the worse wall. */
export interface Tracing {
  /** Largest √2·|u̇| over the groove speed. */
  readonly facet: Float64Array;
  /** Least V²/|ü|, m, both signs; Infinity without motion. */
  readonly bend: Float64Array;
}

/**
 * Facet and bend at the groove speed of each quarter's inner end, its least.
 * Source: a published limit, velocity at most groove speed for 45° facets; curvature of a curve at
 * speed V, at most |ü|/V².
 */
export function traceWalls(side: PlannedSide, plan: Plan): Tracing {
  const { left, right, quarterCount } = side.motion;
  const facet = new Float64Array(side.count);
  const bend = new Float64Array(side.count).fill(Number.POSITIVE_INFINITY);
  for (let quarter = 0; quarter < quarterCount; quarter++) {
    const speed = quarterSpeed(side, plan, quarter + side.lead);
    let velocity = left.velocityPeak[quarter]!;
    if (right.velocityPeak[quarter]! > velocity) velocity = right.velocityPeak[quarter]!;
    let acceleration = left.accelerationPeak[quarter]!;
    if (right.accelerationPeak[quarter]! > acceleration) {
      acceleration = right.accelerationPeak[quarter]!;
    }
    facet[quarter + side.lead] = edgeSlope(plan.gain * velocity, speed);
    bend[quarter + side.lead] = bendRadius(plan.gain * acceleration, speed);
  }
  return { facet, bend };
}

/**
 * Least groove speed within a planned quarter. No groove runs inside the finishing groove: a
 * program that would is judged as if at its edge.
 */
export function quarterSpeed(
  { motion, settings }: PlannedSide,
  { radius }: Plan,
  index: number,
): MetresPerSecond {
  let least = settings.finishingDiameter / 2;
  if (radius[index + 1]! > least) least = radius[index + 1]!;
  return grooveSpeed(least, motion.turnSeconds);
}

/** Velocity of a wall's edge over the groove speed, √2·|u̇|/V. */
export function edgeSlope(wallVelocity: MetresPerSecond, speed: MetresPerSecond): number {
  return (Math.SQRT2 * wallVelocity) / speed;
}

/** V²/|ü|, a lower bound of the wall's radius of curvature; Infinity without motion. */
export function bendRadius(wallAcceleration: number, speed: MetresPerSecond): Metres {
  return (speed * speed) / wallAcceleration;
}
