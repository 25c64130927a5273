import type { Hertz, Seconds } from '../units.js';

/** A change of the sound itself, in named seconds of the program. Plain data: it crosses threads. */
export type SoundEdit = EditSpan &
  (
    | { readonly kind: 'level'; readonly gainDb: number }
    | {
        /** A bell or a high shelf: see tone-filters.ts. */
        readonly kind: 'bell' | 'shelf';
        readonly frequency: Hertz;
        readonly gainDb: number;
      }
    | {
        /** The chain's own elliptical filter, switched in. */
        readonly kind: 'elliptical';
        readonly corner: Hertz;
        readonly order: 1 | 2;
      }
  );

/** It is in full from `fromSeconds` to `untilSeconds`, and faded in before and out after them. */
export interface EditSpan {
  readonly fromSeconds: Seconds;
  readonly untilSeconds: Seconds;
}

/** How long an edit takes to come and to go: short to the ear, and no click. Common practice. */
export const RAMP_SECONDS: Seconds = 0.1;

/** Frames of a program between which an edit changes something. */
export function touchedFrames(
  { fromSeconds, untilSeconds }: EditSpan,
  rate: Hertz,
): { readonly from: number; readonly until: number } {
  return {
    from: Math.round((fromSeconds - RAMP_SECONDS) * rate),
    until: Math.round((untilSeconds + RAMP_SECONDS) * rate),
  };
}

/** Share of an edit at a frame: raised cosines, ½·(1 − cos πt/ramp), on both sides. */
export function editShare(frame: number, edit: EditSpan, rate: Hertz): number {
  const { from, until } = touchedFrames(edit, rate);
  const ramp = RAMP_SECONDS * rate;
  return risen((frame - from) / ramp) * risen((until - frame) / ramp);
}

function risen(share: number): number {
  return 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, Math.max(0, share)));
}
