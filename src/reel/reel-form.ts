import { frameBytes, type SampleFormat } from '../analysis/sample-format.js';
import { chunkBytes } from '../report/cue-copy/chunk-bytes.js';

/** The parts of a WAV file around its frames. */
export interface ReelForm {
  readonly head: Uint8Array;
  /** After the frames: padding of an odd size, then the marks. */
  readonly tail: Uint8Array;
}

const PCM = 1;
const FLOAT = 3;

/**
 * A RIFF form around so many frames and these marks. Float has the number of frames in a `fact`
 * chunk, as what is no PCM must.
 * Source: Multimedia Programming Interface and Data Specifications 1.0, Microsoft and IBM, 1991, and
 * its New Multimedia Data Types of 1994 (from memory).
 * @param frames as many as leave the file under 4 GiB: a reel is a minute or two
 */
export function reelForm(format: SampleFormat, frames: number, marks: Uint8Array): ReelForm {
  const sound = frames * frameBytes(format);
  const chunks = Buffer.concat([
    chunkBytes('fmt ', formatBytes(format)),
    ...(format.encoding === 'float' ? [chunkBytes('fact', number32(frames))] : []),
  ]);
  const tail = Buffer.concat([new Uint8Array(sound % 2), marks]);
  const size = 4 + chunks.length + 8 + sound + tail.length;
  if (size > 0xffffffff) throw new RangeError(`a reel of ${size} bytes`);
  const head = [latin('RIFF'), number32(size), latin('WAVE'), chunks, latin('data')];
  return { head: Buffer.concat([...head, number32(sound)]), tail };
}

function formatBytes(format: SampleFormat): Uint8Array {
  const { encoding, bitDepth, channels, sampleRate } = format;
  // What is no PCM says the size of an extension, here none.
  const view = new DataView(new ArrayBuffer(encoding === 'pcm' ? 16 : 18));
  view.setUint16(0, encoding === 'pcm' ? PCM : FLOAT, true);
  view.setUint16(2, channels, true);
  view.setUint32(4, sampleRate, true);
  view.setUint32(8, sampleRate * frameBytes(format), true);
  view.setUint16(12, frameBytes(format), true);
  view.setUint16(14, bitDepth, true);
  return new Uint8Array(view.buffer);
}

function latin(text: string): Uint8Array {
  return Buffer.from(text, 'latin1');
}

function number32(value: number): Uint8Array {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setUint32(0, value, true);
  return bytes;
}
