import { join } from 'node:path';
import { execa } from 'execa';
import { beforeEach, describe, expect, test } from 'vitest';
import { convertSamples } from '../../src/analysis/convert-samples.js';
import type { SoundFile } from '../../src/analysis/sound-file.js';
import { needProgram } from '../support/outside-program.js';
import { readSound } from '../support/read-sound.js';
import { temporaryFolder } from '../support/temporary-folder.js';

/**
 * Outside sources: ffmpeg and sox, live only: what they write is compared where they are. Each
 * writes a file in its own way, ffmpeg decodes it to doubles, and every sample must be the same.
 * All divide integers by 2^(bits − 1), so there is no tolerance.
 */
const NOISE = 'anoisesrc=d=0.3:a=0.95:r=96000:c=pink:seed=1';
const OTHER_NOISE = 'anoisesrc=d=0.3:a=0.5:r=96000:c=brown:seed=2';
const STEREO = ['-f', 'lavfi', '-i', NOISE, '-f', 'lavfi', '-i', OTHER_NOISE, '-lavfi', 'amerge'];
const MONO = ['-f', 'lavfi', '-i', NOISE];
const FRAMES = 28_800;

/** Interleaved stereo of a whole file, and its head. */
async function ourReading(path: string): Promise<{ file: SoundFile; samples: Float64Array }> {
  const { file, bytes } = await readSound(path, { blockBytes: 10_000 });
  const samples = new Float64Array(2 * file.frames);
  expect(convertSamples(bytes, file.format, samples)).toBe(-1);
  return { file, samples };
}

/** Mono goes to both sides by hand: ffmpeg's own way of doubling turns it down by 3 dB. */
async function ffmpegReading(path: string, { format }: SoundFile): Promise<Float64Array> {
  const pan = `pan=stereo|c0=c0|c1=c${format.channels - 1}`;
  const args = ['-v', 'error', '-i', path, '-f', 'f64le', '-af', pan, '-'];
  const { stdout } = await execa('ffmpeg', args, { encoding: 'buffer', maxBuffer: 2 ** 28 });
  return new Float64Array(Uint8Array.from(stdout).buffer);
}

async function expectSame(path: string, head: Partial<SoundFile>): Promise<void> {
  const { file, samples } = await ourReading(path);
  expect(file).toMatchObject(head);
  expect(samples).toEqual(await ffmpegReading(path, file));
  expect(samples.some((sample) => Math.abs(sample) > 0.5)).toBe(true);
}

describe('what ffmpeg writes is read to the last bit', () => {
  beforeEach((context) => needProgram('ffmpeg', context));

  test.each([
    { codec: 'pcm_s8', source: MONO, container: 'AIFF', bitDepth: 8 },
    { codec: 'pcm_s16be', source: STEREO, container: 'AIFF', bitDepth: 16 },
    { codec: 'pcm_s24be', source: STEREO, container: 'AIFF', bitDepth: 24 },
    { codec: 'pcm_s24be', source: MONO, container: 'AIFF', bitDepth: 24 },
    { codec: 'pcm_s32be', source: STEREO, container: 'AIFF', bitDepth: 32 },
    { codec: 'pcm_s16le', source: STEREO, container: 'AIFF-C', bitDepth: 16 },
    { codec: 'pcm_f32be', source: STEREO, container: 'AIFF-C', bitDepth: 32 },
    { codec: 'pcm_f64be', source: MONO, container: 'AIFF-C', bitDepth: 64 },
  ] as const)('$codec, $container', async ({ codec, source, container, bitDepth }) => {
    const path = join(await temporaryFolder(), 'side.aiff');
    await execa('ffmpeg', ['-v', 'error', ...source, '-c:a', codec, path]);
    const encoding = codec.includes('_f') ? 'float' : 'pcm';
    const format = {
      encoding,
      bitDepth,
      channels: source === MONO ? 1 : 2,
      sampleRate: 96_000,
    } as const;
    await expectSame(path, { container, format, frames: FRAMES, truncated: false });
  });

  test.each([
    { bits: 16, source: STEREO, more: [] },
    { bits: 16, source: MONO, more: ['-compression_level', '0'] },
    { bits: 24, source: STEREO, more: ['-compression_level', '12'] },
    { bits: 24, source: MONO, more: ['-frame_size', '192'] },
    { bits: 24, source: STEREO, more: ['-frame_size', '16384', '-lpc_type', 'none'] },
    { bits: 16, source: STEREO, more: ['-ch_mode', 'mid_side', '-exact_rice_parameters', '1'] },
    { bits: 24, source: STEREO, more: ['-ch_mode', 'left_side', '-lpc_coeff_precision', '15'] },
    { bits: 24, source: STEREO, more: ['-ar', '192000', '-ch_mode', 'right_side'] },
    { bits: 16, source: STEREO, more: ['-ar', '11025'] },
  ] as const)('FLAC, $bits bits, $more', async ({ bits, source, more }) => {
    const path = join(await temporaryFolder(), 'side.flac');
    const sample = ['-sample_fmt', bits === 16 ? 's16' : 's32'];
    await execa('ffmpeg', ['-v', 'error', ...source, ...sample, ...more, path]);
    const format = { encoding: 'pcm', bitDepth: bits, channels: source === MONO ? 1 : 2 } as const;
    const { file } = await readSound(path);
    expect(file.format).toMatchObject(format);
    await expectSame(path, { container: 'FLAC', truncated: false });
  });

  test.each([
    ['aiff', 'pcm_s16be', 'pcm_s16le'],
    ['flac', 'flac', 'pcm_s16le'],
  ])('into a pipe, where it cannot go back: %s', async (format, codec, plain) => {
    const folder = await temporaryFolder();
    const [path, wav] = [join(folder, 'side'), join(folder, 'side.wav')];
    const args = ['-v', 'error', ...STEREO, '-sample_fmt', 's16', '-c:a'];
    const piped = [...args, codec, '-f', format, '-'];
    await execa('ffmpeg', piped, { encoding: 'buffer', stdout: { file: path } });
    await execa('ffmpeg', [...args, plain, wav]);
    const { file, samples } = await ourReading(path);
    expect(file).toMatchObject({ frames: FRAMES, truncated: true });
    // Not even ffmpeg reads its own AIFF where the sizes were left open.
    expect(samples).toEqual(await ffmpegReading(wav, file));
  });

  test('both ends of the range of 24 bits and full scale beyond them', async () => {
    const path = join(await temporaryFolder(), 'side.flac');
    const square = ['-f', 'lavfi', '-i', 'aevalsrc=2*sgn(sin(300*t))|-1-t:d=0.3:s=48000'];
    await execa('ffmpeg', ['-v', 'error', ...square, '-sample_fmt', 's32', path]);
    const { samples } = await ourReading(path);
    expect(Math.min(...samples)).toBe(-1);
    expect(Math.max(...samples)).toBe(1 - 2 ** -23);
    await expectSame(path, { frames: 14_400 });
  });
});

describe('what sox writes is read to the last bit', () => {
  beforeEach((context) => {
    needProgram('ffmpeg', context);
    needProgram('sox', context);
  });

  test.each([
    { name: 'side.aiff', args: ['-b', '24'], container: 'AIFF' },
    { name: 'side.aiff', args: ['-b', '8', '-c', '1'], container: 'AIFF' },
    { name: 'side.aifc', args: ['-b', '16'], container: 'AIFF-C' },
    { name: 'side.aifc', args: ['-b', '32'], container: 'AIFF-C' },
    { name: 'side.flac', args: ['-b', '8', '-C', '8'], container: 'FLAC' },
    { name: 'side.flac', args: ['-b', '16', '-c', '1', '-C', '0'], container: 'FLAC' },
    { name: 'side.flac', args: ['-b', '24'], container: 'FLAC' },
  ] as const)('$name, $args', async ({ name, args, container }) => {
    const path = join(await temporaryFolder(), name);
    const noise = ['synth', '48001s', 'noise', 'pinknoise', 'gain', '-n', '-1'];
    await execa('sox', ['-R', '-n', '-r', '48000', '-c', '2', ...args, path, ...noise]);
    await expectSame(path, { container, frames: 48_001, truncated: false });
  });
});
