import { convertSamples } from '../analysis/convert-samples.js';
import type { FrameRange, FrameSource } from '../analysis/frame-source.js';
import { frameBytes, type SampleFormat } from '../analysis/sample-format.js';
import type { Settings } from '../settings.js';
import { EditVoice } from './edit-voice.js';
import type { SoundEdit } from './sound-edit.js';

/**
 * A program with some of its seconds changed: 64-bit floats in two channels. Where no edit touches
 * them the samples are what they were, exactly.
 * @param settings of the side, for how the channels are wired
 */
export function editedFrames(
  source: FrameSource,
  edits: readonly SoundEdit[],
  settings: Settings,
): FrameSource {
  if (edits.length === 0) return source;
  const { frames, path } = source;
  const format: SampleFormat = {
    encoding: 'float',
    bitDepth: 64,
    channels: 2,
    sampleRate: source.format.sampleRate,
  };
  return {
    path,
    format,
    frames,
    read: (range = {}) => readEdited(source, edits, settings, range),
    refuse: (frame) => source.refuse(frame),
  };
}

async function* readEdited(
  source: FrameSource,
  edits: readonly SoundEdit[],
  settings: Settings,
  { firstFrame = 0, endFrame = source.frames, blockBytes = 2 ** 20 }: FrameRange,
): AsyncGenerator<Uint8Array, void, undefined> {
  const { format } = source;
  const voices = edits
    .map((edit) => new EditVoice(edit, settings, format.sampleRate))
    .filter(({ from, until }) => from < endFrame && until > firstFrame);
  const from = Math.min(firstFrame, ...voices.map((voice) => voice.from));
  const range = { firstFrame: from, endFrame, blockBytes: Math.min(blockBytes, 2 ** 18) };
  let frame = from;
  for await (const block of source.read(range)) {
    const count = block.length / frameBytes(format);
    const samples = new Float64Array(2 * count);
    convertSamples(block, format, samples);
    const touching = voices.filter((voice) => voice.from < frame + count && voice.until > frame);
    if (touching.length > 0) edit(samples, touching, frame);
    const unwanted = Math.max(0, firstFrame - frame);
    if (unwanted < count) yield new Uint8Array(samples.buffer, 16 * unwanted);
    frame += count;
  }
}

/** Changes a block of interleaved samples. */
function edit(samples: Float64Array, voices: readonly EditVoice[], firstFrame: number): void {
  const channel = (first: 0 | 1) =>
    new Float64Array(samples.length / 2).map((_, n) => samples[2 * n + first] ?? 0);
  const both = { left: channel(0), right: channel(1) };
  for (const voice of voices) voice.apply(both, firstFrame);
  for (const [n, value] of both.left.entries()) {
    samples[2 * n] = value;
    samples[2 * n + 1] = both.right[n] ?? 0;
  }
}
