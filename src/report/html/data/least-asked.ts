import type { Settings } from '../../../settings.js';
import type { Metres, MetresPerSecond } from '../../../units.js';

/** The highest level at which headroom is looked for, dB, and a little more. */
const HIGHEST_DB = 12.1;

/** The least magnitudes, at level 0 dB, that the model ever asks how often they are exceeded. */
export interface LeastAsked {
  readonly edgeVelocity: MetresPerSecond;
  /** m/s². */
  readonly acceleration: number;
}

/**
 * facet·V/g and V²/tip/g at the slowest groove there can be and the highest gain: at levels that
 * the page offers for every limit, and up to +12 dB, where headroom is looked for, for faults.
 * @param leastDiameter innermost diameter of any format that is offered; nothing is judged further in
 * @param levelMost highest level that is offered, dB
 */
export function leastAsked(
  settings: Settings,
  leastDiameter: Metres,
  levelMost: number,
): LeastAsked {
  const { rpm, facetCaution, facetFault, playbackTip, lineTip } = settings;
  const speed = (Math.PI * leastDiameter * rpm) / 60;
  const offered = 10 ** (levelMost / 20);
  const searched = 10 ** (Math.max(levelMost, HIGHEST_DB) / 20);
  return {
    edgeVelocity: speed * Math.min(facetCaution / offered, facetFault / searched),
    acceleration: speed ** 2 * Math.min(1 / playbackTip / offered, 1 / lineTip / searched),
  };
}

/** The histogram class that a magnitude lies in. */
export function classOf(magnitude: number): number {
  return Math.floor(4 * Math.log2(magnitude));
}
