import type { ProgramChecks } from '../../analysis/motion.js';
import type { Finding, SourceFacts } from '../forecast-types.js';
import { finding } from './finding.js';

/** All thresholds of this file: common practice, no published source. */
const SILENT_DBFS = -60;
const ULTRASONIC_DBFS = -60;
const DC_DBFS = -50;
const CHANNELS_APART_DB = 40;
const OPPOSED_CORRELATION = -0.5;
const LEAST_RATE = 44_100;

/** What the file says against itself, whatever is cut from it. */
export function fileFindings(program: ProgramChecks, source: SourceFacts): Finding[] {
  const whole = [
    ...(source.truncated ? [finding('truncated', 'caution')] : []),
    ...(source.sampleRate < LEAST_RATE ? [rateLow(source)] : []),
  ];
  // A silent file has no channels to compare.
  if (amplitudeDb(program.samplePeak) < SILENT_DBFS) {
    return [
      finding('silent', 'fault', { limit: SILENT_DBFS, unit: 'decibel-full-scale' }),
      ...whole,
    ];
  }
  return [
    ...whole,
    ...peakFindings(program),
    ...dcOffset(program),
    ...ultrasonic(program),
    ...channelFindings(program, source),
  ];
}

function rateLow({ sampleRate }: SourceFacts): Finding {
  return finding('rate-low', 'note', { value: sampleRate, limit: LEAST_RATE, unit: 'hertz' });
}

/** `clipped`, and `over-peak` for a true peak over 0 dBTP. */
function peakFindings({
  clippedRuns,
  firstClipSeconds,
  longestClip,
  truePeak,
}: ProgramChecks): Finding[] {
  const unit = 'decibel-full-scale';
  const peak = amplitudeDb(truePeak);
  return [
    ...(clippedRuns > 0
      ? [
          finding('clipped', 'caution', {
            atSeconds: firstClipSeconds,
            value: clippedRuns,
            limit: 0,
            unit: 'count',
            ...(longestClip === null ? {} : { longest: longestClip }),
          }),
        ]
      : []),
    ...(peak > 0 ? [finding('over-peak', 'note', { value: peak, limit: 0, unit })] : []),
  ];
}

/** `dc-offset`: the mean of a channel, of the larger one if both are off. */
function dcOffset({ mean: [left, right] }: ProgramChecks): Finding[] {
  const value = amplitudeDb([Math.abs(left), Math.abs(right)]);
  if (value <= DC_DBFS) return [];
  const wall = Math.abs(left) > Math.abs(right) ? 'left' : 'right';
  const both = Math.min(Math.abs(left), Math.abs(right)) > 10 ** (DC_DBFS / 20);
  const known = { value, limit: DC_DBFS, unit: 'decibel-full-scale' } as const;
  return [finding('dc-offset', 'caution', { ...known, wall: both ? 'both' : wall })];
}

/** `ultrasonic`: mean square above the judged band, 0 dBFS being that of a full-scale sine. */
function ultrasonic({ ultrasonicMeanSquare }: ProgramChecks): Finding[] {
  const value = 10 * Math.log10(2 * ultrasonicMeanSquare);
  if (!(value > ULTRASONIC_DBFS)) return [];
  const unit = 'decibel-full-scale';
  return [finding('ultrasonic', 'note', { value, limit: ULTRASONIC_DBFS, unit })];
}

/** `mono`, or `one-sided`, or `polarity`: what the channels are to each other. */
function channelFindings(program: ProgramChecks, { channels }: SourceFacts): Finding[] {
  if (channels === 1 || program.identicalChannels) return [finding('mono', 'note')];
  const [left, right] = program.meanSquare;
  const apart = 10 ** (CHANNELS_APART_DB / 10);
  if (left > apart * right) return [finding('one-sided', 'caution', { wall: 'left' })];
  if (right > apart * left) return [finding('one-sided', 'caution', { wall: 'right' })];
  if (program.correlation >= OPPOSED_CORRELATION) return [];
  return [
    finding('polarity', 'caution', {
      value: program.correlation,
      limit: OPPOSED_CORRELATION,
      unit: 'ratio',
    }),
  ];
}

/** Level of the larger of two amplitudes, dB; −Infinity for silence. */
function amplitudeDb([left, right]: readonly [number, number]): number {
  return 20 * Math.log10(Math.max(left, right));
}
