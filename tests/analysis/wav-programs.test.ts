import { join } from 'node:path';
import { execa } from 'execa';
import { beforeEach, describe, expect, test } from 'vitest';
import { convertSamples } from '../../src/analysis/convert-samples.js';
import { readFrames } from '../../src/analysis/wav-blocks.js';
import { type WavFile, withWav } from '../../src/analysis/wav-file.js';
import { needProgram } from '../support/outside-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

/**
 * Outside sources: ffmpeg and sox, live only: what they write is compared where they are. Each
 * writes a file in its own way, ffmpeg decodes it to doubles, and every sample must be the same.
 * Both divide integers by 2^(bits − 1), so there is no tolerance.
 */
const NOISE = 'anoisesrc=d=0.3:a=0.9:r=96000:seed=1';
const OTHER_NOISE = 'anoisesrc=d=0.3:a=0.9:r=96000:seed=2';
const STEREO = ['-f', 'lavfi', '-i', NOISE, '-f', 'lavfi', '-i', OTHER_NOISE, '-lavfi', 'amerge'];
const MONO = ['-f', 'lavfi', '-i', NOISE];

/** Interleaved stereo of a whole file, and its header. */
async function ourReading(path: string): Promise<{ file: WavFile; samples: Float64Array }> {
  return await withWav(path, async (wav) => {
    const samples = new Float64Array(2 * wav.file.frames);
    let frame = 0;
    for await (const block of readFrames(wav, { blockBytes: 10_000 })) {
      const { bitDepth, channels } = wav.file.format;
      expect(convertSamples(block, wav.file.format, samples.subarray(2 * frame))).toBe(-1);
      frame += block.length / ((bitDepth / 8) * channels);
    }
    return { file: wav.file, samples };
  });
}

/** Mono goes to both sides by hand: ffmpeg's own way of doubling turns it down by 3 dB. */
async function ffmpegReading(path: string, { format }: WavFile): Promise<Float64Array> {
  const pan = `pan=stereo|c0=c0|c1=c${format.channels - 1}`;
  const args = ['-v', 'error', '-i', path, '-f', 'f64le', '-af', pan, '-'];
  const { stdout } = await execa('ffmpeg', args, { encoding: 'buffer' });
  return new Float64Array(Uint8Array.from(stdout).buffer);
}

describe('what ffmpeg writes is read to the last bit', () => {
  beforeEach((context) => needProgram('ffmpeg', context));

  test.each([
    { codec: 'pcm_u8', source: STEREO, more: [], container: 'RIFF' },
    { codec: 'pcm_s16le', source: MONO, more: [], container: 'RIFF' },
    { codec: 'pcm_s24le', source: STEREO, more: [], container: 'RIFF' },
    { codec: 'pcm_s24le', source: STEREO, more: ['-rf64', 'always'], container: 'RF64' },
    { codec: 'pcm_s32le', source: MONO, more: ['-rf64', 'always'], container: 'RF64' },
    {
      codec: 'pcm_f32le',
      source: STEREO,
      more: ['-write_bext', '1', '-metadata', 'description=odd'],
      container: 'RIFF',
    },
    { codec: 'pcm_f64le', source: MONO, more: [], container: 'RIFF' },
  ])('$codec, $container, $more', async ({ codec, source, more, container }) => {
    const path = join(await temporaryFolder(), 'side.wav');
    await execa('ffmpeg', ['-v', 'error', ...source, '-c:a', codec, ...more, path]);
    const { file, samples } = await ourReading(path);
    expect(file).toMatchObject({ container, frames: 28_800, truncated: false });
    expect(samples).toEqual(await ffmpegReading(path, file));
    expect(samples.some((sample) => Math.abs(sample) > 0.5)).toBe(true);
  });

  test('into a pipe, where it cannot go back to fill in the sizes, is read to the end', async () => {
    const path = join(await temporaryFolder(), 'side.wav');
    const args = ['-v', 'error', ...STEREO, '-f', 'wav', '-'];
    await execa('ffmpeg', args, { encoding: 'buffer', stdout: { file: path } });
    const { file, samples } = await ourReading(path);
    expect(file).toMatchObject({ frames: 28_800, truncated: true });
    expect(samples).toEqual(await ffmpegReading(path, file));
  });
});

describe('what sox writes is read to the last bit', () => {
  beforeEach((context) => {
    needProgram('ffmpeg', context);
    needProgram('sox', context);
  });

  test.each([
    { how: '24 bits, EXTENSIBLE', args: ['-b', '24'] },
    { how: '32 bits, EXTENSIBLE', args: ['-b', '32'] },
    { how: '8 bits, of an odd length', args: ['-b', '8', '-c', '1'] },
    { how: 'float', args: ['-e', 'float', '-b', '32'] },
  ])('$how', async ({ args }) => {
    const path = join(await temporaryFolder(), 'side.wav');
    const noise = ['synth', '4801s', 'noise', 'noise', 'gain', '-1'];
    await execa('sox', ['-R', '-n', '-r', '48000', '-c', '2', ...args, path, ...noise]);
    const { file, samples } = await ourReading(path);
    expect(file).toMatchObject({ container: 'RIFF', frames: 4801, truncated: false });
    expect(samples).toEqual(await ffmpegReading(path, file));
    expect(samples.some((sample) => Math.abs(sample) > 0.5)).toBe(true);
  });
});
