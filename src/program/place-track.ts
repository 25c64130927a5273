import type { Hertz } from '../units.js';
import type { ProgramTrack } from './program-side.js';
import { commonPeriod } from './track-chain.js';

/** Where a track lies in a program. */
export type TrackPlace = Pick<
  ProgramTrack,
  'startFrame' | 'stopFrame' | 'originFrame' | 'leadFrames'
>;

/**
 * Places a track that begins at a frame of its own rate, counted from the first sample of the
 * program on.
 * @param frames how long it is, of its own
 * @param sampleRate its own
 * @param rate of the program
 */
export function placeTrack(
  start: number,
  frames: number,
  sampleRate: Hertz,
  rate: Hertz,
): TrackPlace {
  const period = commonPeriod(sampleRate, rate);
  const periods = Math.floor(start / period.track);
  return {
    startFrame: Math.floor((start * rate) / sampleRate),
    stopFrame: Math.ceil(((start + frames) * rate) / sampleRate),
    originFrame: periods * period.program,
    leadFrames: start - periods * period.track,
  };
}

/** The frame of its own rate that a placed track begins at: the inverse of `placeTrack`. */
export function ownStart(
  { originFrame, leadFrames }: TrackPlace,
  sampleRate: Hertz,
  rate: Hertz,
): number {
  const period = commonPeriod(sampleRate, rate);
  return (originFrame / period.program) * period.track + leadFrames;
}
