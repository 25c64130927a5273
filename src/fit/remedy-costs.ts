import type { Remedy, RemedyKind } from './remedy.js';

/** What a kind costs by itself, and for each unit of how much it does. */
interface Cost {
  readonly base: number;
  /** A decibel, a hundred hertz of corner, an octave of order. */
  readonly each: number;
}

/**
 * What remedies cost against each other, without a unit; furrow's own choice. Local before global;
 * in each of the two spacing before level, level before filtering, filtering before the running
 * order; speed, which is another disc, last. Little before much: a decibel, 100 Hz of an elliptical corner and its second order count.
 */
export const REMEDY_COSTS: Readonly<Record<RemedyKind, Cost>> = {
  'pitch-there': { base: 1, each: 0 },
  'width-there': { base: 1.2, each: 0 },
  gap: { base: 1.5, each: 0 },
  'level-there': { base: 2, each: 0.2 },
  'elliptical-there': { base: 3, each: 0.2 },
  'bell-there': { base: 3.5, each: 0.2 },
  'shelf-there': { base: 3.6, each: 0.2 },

  silence: { base: 6, each: 0 },
  'base-pitch': { base: 6.5, each: 0 },
  'base-width': { base: 7, each: 0 },
  polarity: { base: 7.5, each: 0 },
  level: { base: 10, each: 1 },
  elliptical: { base: 12, each: 1 },
  'track-outward': { base: 20, each: 0 },
  order: { base: 22, each: 0 },
  rpm: { base: 24, each: 0 },
};

export function remedyCost(remedy: Remedy): number {
  const { base, each } = REMEDY_COSTS[remedy.kind];
  return base + each * amountOf(remedy);
}

function amountOf(remedy: Remedy): number {
  if ('gainDb' in remedy) return Math.abs(remedy.gainDb);
  return 'corner' in remedy ? remedy.corner / 100 + (remedy.order - 1) : 0;
}
