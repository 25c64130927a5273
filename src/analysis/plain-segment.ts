import type { Settings } from '../settings.js';
import { bandLimitOf, LEAD_BASE_FRAMES, LEAD_FRAMES } from './band-limit.js';
import { convertSamples } from './convert-samples.js';
import type { SegmentMotion, Span } from './kernel/segment.js';
import { plainWalls } from './plain-chain.js';
import { frameBytes, type SampleFormat } from './sample-format.js';

/** What `moveSegment` of the kernel does, by the plain definition. */
export function plainSegment(
  format: SampleFormat,
  bytes: Uint8Array,
  settings: Settings,
  span: Span,
): SegmentMotion {
  const limit = bandLimitOf(format.sampleRate);
  const frames = bytes.length / frameBytes(format);
  const samples = new Float64Array(2 * frames);
  convertSamples(bytes, format, samples);
  const channel = (of: 0 | 1): Float64Array =>
    Float64Array.from({ length: frames }, (_, n) => samples[2 * n + of]!);
  const rate = limit.internalRate;
  const first = Math.round(span.from * rate);
  const count = Math.round(span.length * rate);
  const heardBase = Math.ceil(frames / 2 ** limit.halvings);
  const wantedBase = Math.ceil((first + count) / 2);
  const length = 2 * LEAD_BASE_FRAMES + Math.max(heardBase, wantedBase);
  const program = { left: channel(0), right: channel(1) };
  const { left, right } = plainWalls(program, length, limit, settings);
  const row = (displacement: Float64Array): Float64Array =>
    Float64Array.from({ length: count }, (_, n) => displacement[LEAD_FRAMES + first + n] ?? 0);
  return { rate, left: row(left.displacement), right: row(right.displacement) };
}
