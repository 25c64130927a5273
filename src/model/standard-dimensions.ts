import type { Settings } from '../settings.js';
import { INCH, type Metres } from '../units.js';

/** What of a disc a standard gives a dimension of. */
export const DIMENSIONS = ['start', 'lead-in', 'band', 'lead-out', 'finishing'] as const;
export type Dimension = (typeof DIMENSIONS)[number];

/** What a standard allows; `least` is 0 where it bounds from above only. */
export interface Allowed {
  readonly least: Metres;
  readonly most: Metres;
}

/**
 * What the standards allow on a disc of a size.
 * - start: outermost recorded diameter, IEC 98:1987, 8.5, from a secondary text;
 * - lead-in: pitch, 1.2 ± 0.4 mm, 8.4;
 * - lead-out: pitch, 6.4 ± 3.2 mm, for one turn at least, 8.8;
 * - finishing: diameter of the closed groove, 106.4 ± 0.8 mm, at 7 inches 97.4 ± 1.0 mm, 8.9;
 * - band: pitch between two tracks, 16 per inch at least, RIAA, from a secondary text.
 */
export function standardDimension(dimension: Dimension, disc: Settings['disc']): Allowed {
  switch (dimension) {
    case 'start':
      return { least: 0, most: OUTERMOST[disc] };
    case 'lead-in':
      return { least: 0.8e-3, most: 1.6e-3 };
    case 'lead-out':
      return { least: 3.2e-3, most: 9.6e-3 };
    case 'band':
      return { least: 0, most: INCH / 16 };
    case 'finishing':
      return disc === 7 ? { least: 96.4e-3, most: 98.4e-3 } : { least: 105.6e-3, most: 107.2e-3 };
  }
}

const OUTERMOST: Readonly<Record<Settings['disc'], Metres>> = {
  12: 292.6e-3,
  10: 241.8e-3,
  7: 168.3e-3,
};
