import { badSample } from './convert-samples.js';
import type { FrameSource } from './frame-source.js';
import { readFrames } from './wav-blocks.js';
import type { OpenWav } from './wav-file.js';

/** The frames of an open WAV file, as they lie in it. */
export function wavFrames(wav: OpenWav): FrameSource {
  const { path, format, frames } = wav.file;
  return {
    path,
    format,
    frames,
    read: (range) => readFrames(wav, range),
    refuse: (frame) => badSample(wav.file, frame),
  };
}
