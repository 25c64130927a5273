import { type DigitalSilence, LEAST_SILENCE, type Span } from '../../analysis/motion.js';
import type { Seconds } from '../../units.js';
import type { Finding } from '../forecast-types.js';
import type { HandTrack } from '../side-plan-input.js';
import { finding } from './finding.js';

/** Less than a frame at any rate. */
const ROUNDING: Seconds = 1e-6;

/**
 * `gap-inside`: digital silence inside the program, all of it as one. Of a side of several tracks
 * what lies inside one of them counts: between them silence is meant.
 */
export function gapFindings(silence: DigitalSilence, tracks: readonly HandTrack[]): Finding[] {
  const { count, seconds, first } = tracks.length === 0 ? silence : insideTracks(silence, tracks);
  const [span] = first;
  if (span === undefined) return [];
  return [
    finding('gap-inside', 'note', {
      atSeconds: span.fromSeconds,
      untilSeconds: span.untilSeconds,
      value: seconds,
      limit: LEAST_SILENCE,
      unit: 'second',
      count,
      spans: first,
    }),
  ];
}

function insideTracks({ first }: DigitalSilence, tracks: readonly HandTrack[]): DigitalSilence {
  const inside = first.filter((span) => tracks.some((track) => isInside(span, track)));
  const seconds = inside.reduce((sum, span) => sum + span.untilSeconds - span.fromSeconds, 0);
  return { count: inside.length, seconds, first: inside };
}

function isInside({ fromSeconds, untilSeconds }: Span, track: HandTrack): boolean {
  return fromSeconds > track.fromSeconds + ROUNDING && untilSeconds < track.untilSeconds - ROUNDING;
}
