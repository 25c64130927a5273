import type { ExecutedColumns } from '../model/executed-columns.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';

/** What a test cut is to show. */
export const LOOKS = ['land', 'width', 'facet', 'bend'] as const;
export type Look = (typeof LOOKS)[number];

/** A second that is hard to cut for one reason. */
export interface HardSecond {
  readonly look: Look;
  /** Its middle, program time. */
  readonly atSeconds: Seconds;
  /** The quarter turn that is worst in it. */
  readonly quarter: number;
}

/**
 * The worst second of a kind among those that are open.
 * Land and width: around the quarter turn that has least of it. Facet and bend: the whole quarters
 * nearest to a second whose worst samples are steepest, or most bent, on average: what decides
 * there is the share of time, and one sample says little.
 * Nothing counts that is far from its limit: land of an unmodulated groove, a width more than half
 * way from widthMin to what is set, a facet under half of facetCaution, a bend over twice the
 * playback tip. These limits are furrow's own choice.
 * @param isOpen whether a second with this middle may be taken
 * @returns null where there is none
 */
export function worstSecond(
  look: Look,
  columns: ExecutedColumns,
  settings: Settings,
  isOpen: (atSeconds: Seconds) => boolean,
): HardSecond | null {
  const { quarterSeconds, durationSeconds } = columns;
  const hardness = hardnessOf(look, columns, settings);
  const isShare = look === 'facet' || look === 'bend';
  const whole = isShare ? Math.max(1, Math.round(1 / quarterSeconds)) : 1;
  const window = Math.min(whole, hardness.length);
  let worst: HardSecond | null = null;
  let most = 0;
  for (let first = 0; first + window <= hardness.length; first++) {
    const part = hardness.subarray(first, first + window);
    const mean = part.reduce((sum, each) => sum + each, 0) / window;
    const middle = Math.min((first + window / 2) * quarterSeconds, durationSeconds);
    if (mean <= most || !isOpen(middle)) continue;
    most = mean;
    worst = { look, atSeconds: middle, quarter: first + part.indexOf(Math.max(...part)) };
  }
  return worst;
}

/** How hard each quarter is; 0 where it is not worth a look. */
function hardnessOf(look: Look, columns: ExecutedColumns, settings: Settings): Float64Array {
  const { approachLoose, land, widthSet, lift, facet, bend } = columns;
  const { widthMin, facetCaution, playbackTip } = settings;
  switch (look) {
    case 'land': {
      const most = land.reduce((top, each) => Math.max(top, each), 0);
      return land.map((each, at) => ((approachLoose[at] ?? 0) > 0 ? most - each : 0));
    }
    case 'width':
      return widthSet.map((set, at) => {
        const share = (2 * (lift[at] ?? 0)) / Math.max(set - widthMin, Number.MIN_VALUE);
        return share > 0.5 ? share : 0;
      });
    case 'facet':
      return facet.map((each) => (each > facetCaution / 2 ? each : 0));
    case 'bend':
      return bend.map((each) => (each < 2 * playbackTip ? playbackTip / each : 0));
  }
}
