import { expect, test } from 'vitest';
import { type FormatSource, mixedFormats } from '../../src/report/mixed-formats.js';
import { mixedFormatsText } from '../../src/report/mixed-formats-text.js';

const source = (path: string, known: Partial<FormatSource> = {}): FormatSource => ({
  path,
  container: 'RIFF',
  encoding: 'pcm',
  bitDepth: 24,
  sampleRate: 96_000,
  channels: 2,
  ...known,
});

test('files of one kind differ in nothing, also where their lengths make one of them RF64', () => {
  const files = [source('in/a.wav'), source('in/b.wav', { container: 'RF64' })];
  expect(mixedFormats(files)).toEqual([]);
  expect(mixedFormatsText(files)).toBeNull();
  expect(mixedFormats([])).toEqual([]);
});

test.each([
  ['rate', { sampleRate: 44_100 }, ['96 kHz', '44.1 kHz']],
  ['depth', { bitDepth: 16 }, ['24 bit', '16 bit']],
  ['depth', { encoding: 'float' }, ['24 bit', '24 bit float']],
  ['channels', { channels: 1 }, ['stereo', 'mono']],
  ['container', { container: 'FLAC' }, ['WAV', 'FLAC']],
  ['container', { container: 'AIFF-C' }, ['WAV', 'AIFF']],
] as const)('files of one folder that differ in %s are told by it: %o', (aspect, known, values) => {
  const files = [source('in/b.wav', known), source('in/a.wav'), source('in/c.wav')];
  const [mixed, ...others] = mixedFormats(files);
  expect(others).toEqual([]);
  expect(mixed).toMatchObject({ folder: 'in', aspect });
  expect(mixed?.shares.map(({ value }) => value)).toEqual(values);
  expect(mixed?.shares[1]?.paths).toEqual(['in/b.wav']);
});

test('files of different folders are not compared', () => {
  expect(mixedFormats([source('a/1.wav'), source('b/1.wav', { sampleRate: 48_000 })])).toEqual([]);
});

test('files of one folder are, however their paths come to it', () => {
  const files = [
    source('in/a.wav'),
    source('./in/b.wav', { channels: 1 }),
    source('x/../in/c.wav'),
  ];
  expect(mixedFormats(files)).toMatchObject([{ folder: 'in', aspect: 'channels' }]);
  expect(mixedFormats([source('a.wav'), source('./b.wav', { channels: 1 })])).toHaveLength(1);
});

test('a line counts the commonest, names the others, and counts further folders', () => {
  const files = [
    source('in/1.wav'),
    source('in/2.wav', { sampleRate: 44_100, bitDepth: 16 }),
    source('in/3.wav'),
    source('other/1.wav'),
    source('other/2.wav', { channels: 1 }),
  ];
  expect(mixedFormatsText(files)).toBe(
    'formats differ in the folder in: 96 kHz (2), 44.1 kHz (2.wav); 24 bit (2), 16 bit (2.wav); ' +
      'and in 1 more folder',
  );
});

test('a name that would act on the terminal is told escaped', () => {
  const files = [source('in/a'), source('in/b'), source('in/\u001b[2J', { channels: 1 })];
  expect(mixedFormatsText(files)).toBe(
    'formats differ in the folder in: stereo (2), mono (\\u{1b}[2J)',
  );
});
