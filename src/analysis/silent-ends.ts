import type { Seconds } from '../units.js';

/** How long a program is silent before its sound and behind it. */
export interface SoundEdges {
  readonly headSeconds: Seconds;
  readonly tailSeconds: Seconds;
}
