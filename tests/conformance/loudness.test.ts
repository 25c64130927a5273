// Standard: ITU-R BS.1770-4 (loudness: annex 1; true peak: annex 2). Outside program: ffmpeg's
// ebur128 filter, whose readings record.mjs has written to expected/ffmpeg-loudness.json.
import { beforeAll, describe, expect, test } from 'vitest';
import { createAnalyser } from '../../src/analysis/analyse.js';
import type { ProgramChecks } from '../../src/analysis/motion.js';
import { fileFindings } from '../../src/model/findings/file-findings.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { ffmpegLoudness } from '../reference-signals/ffmpeg-loudness.mjs';
import { type LoudnessSignal, loudnessSignals } from '../reference-signals/loudness-signals.mjs';
import { recordedLoudness } from '../reference-signals/recorded.js';
import { interleavedBytes } from '../support/interleaved-bytes.js';
import { needProgram } from '../support/outside-program.js';

async function programOf(signal: LoudnessSignal): Promise<ProgramChecks> {
  const format = {
    encoding: 'float',
    bitDepth: 32,
    channels: 2,
    sampleRate: signal.rate,
  } as const;
  const analyser = await createAnalyser(format, signal.left.length, resolveProfile({}));
  expect(analyser.push(interleavedBytes(signal))).toBe(-1);
  return analyser.finish().program;
}

describe.each(loudnessSignals())('$name', (signal) => {
  const recorded = recordedLoudness().find(({ name }) => name === signal.name);
  if (recorded === undefined) throw new Error(`no recording of ${signal.name}`);
  let program: ProgramChecks;
  beforeAll(async () => {
    program = await programOf(signal);
  });

  test('integrated loudness is what the meter reads within 0.05 LU', () => {
    expect(program.loudnessLufs ?? Number.NaN).toBeWithin(recorded.lufs, 0.05);
  });

  // EBU Tech 3341 grants a meter −0.4/+0.2 dB (from memory).
  test('true peak is what the meter reads within 0.2 dB', () => {
    const db = 20 * Math.log10(Math.max(...program.truePeak));
    expect(db).toBeWithin(20 * Math.log10(recorded.truePeak), 0.2);
  });

  test('the recording is what the program says here', (context) => {
    needProgram('ffmpeg', context);
    const live = ffmpegLoudness(signal);
    // The meter prints three digits; another build may round the last one otherwise.
    expect([live.lufs, live.truePeak]).toBeWithin([recorded.lufs, recorded.truePeak], 0.0021);
  });
});

test('997 Hz at -23 dBFS on both channels is -23.0 LUFS', async () => {
  for (const signal of loudnessSignals().filter(({ name }) => name.startsWith('997 Hz'))) {
    const { loudnessLufs } = await programOf(signal);
    // BS.1770-4, annex 1: a 997 Hz sine at 0 dBFS on one channel reads -3.01 LUFS; 0.1 LU is the
    // tolerance of EBU Tech 3341 (from memory).
    expect(loudnessLufs ?? Number.NaN).toBeWithin(-23, 0.1);
  }
});

test('what is over full scale between samples alone is over-peak, by what ffmpeg reads', async (context) => {
  needProgram('ffmpeg', context);
  // A quarter of the rate with no sample on a peak: samples at 0.92, 1.3 between them.
  const left = new Float32Array(88_200).map(
    (_, frame) =>
      1.3 * Math.sin(Math.PI * (frame / 88_199)) ** 2 * Math.sin((Math.PI / 2) * (frame + 0.5)),
  );
  const signal = { name: 'over between samples', rate: 44_100, left, right: left };
  const program = await programOf(signal);
  expect(Math.max(...program.samplePeak)).toBeLessThan(0.93);
  const source = { sampleRate: 44_100, channels: 2, truncated: false } as const;
  const found = fileFindings(program, source).filter(({ id }) => id !== 'mono');
  expect(found.map(({ id, severity }) => `${id} ${severity}`)).toEqual(['over-peak note']);
  const { truePeak } = ffmpegLoudness(signal);
  expect(found[0]?.value ?? Number.NaN).toBeWithin(20 * Math.log10(truePeak), 0.2);
  expect(20 * Math.log10(truePeak)).toBeWithin(20 * Math.log10(1.3), 0.2);
});
