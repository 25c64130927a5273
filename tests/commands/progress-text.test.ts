import { describe, expect, test } from 'vitest';
import { progressText, type RunState } from '../../src/commands/progress-text.js';

const STATE: RunState = {
  filesDone: 3,
  files: 12,
  current: 'side d.wav',
  bytesDone: 31,
  bytes: 100,
  elapsedSeconds: 31,
};
const told = (changes: Partial<RunState> = {}) => progressText({ ...STATE, ...changes });

test('files done, share of the bytes, time left at the pace so far, and the current file last', () => {
  // 31 bytes in 31 s leave 69 bytes for 69 s.
  expect(told()).toBe('3 of 12 files done, 31 %, about 1:09 left, now side d.wav');
});

describe('what is not known is not told', () => {
  test.each([
    [
      'no time left in the first two seconds',
      { elapsedSeconds: 1.9 },
      /^3 of 12 files done, 31 %, now/,
    ],
    ['no time left before a byte is done', { bytesDone: 0 }, /^3 of 12 files done, 0 %, now/],
    ['no share of nothing', { bytes: 0, bytesDone: 0 }, /done, 0 %, now/],
    ['no time left where all is read and work goes on', { bytesDone: 100 }, /files done, now side/],
    ['no current file when all are done', { current: null }, /about 1:09 left$/],
  ])('%s', (_, changes, expected) => {
    expect(told(changes)).toMatch(expected);
  });
});

test.each([
  ['a share is never over all of it', { bytesDone: 120, current: null }, / 100 %, about 0:00 left/],
  ['a share is rounded down', { bytesDone: 99.9 }, / 99 %/],
  ['an hour has its place', { bytesDone: 1, elapsedSeconds: 40 }, /about 1:06:00 left/],
  ['one file is one', { files: 1, filesDone: 0 }, /^0 of 1 file done/],
])('%s', (_, changes, expected) => {
  expect(told(changes)).toMatch(expected);
});
