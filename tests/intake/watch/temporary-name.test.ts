import { expect, test } from 'vitest';
import { isTemporaryName } from '../../../src/intake/watch/temporary-name.js';

test.each([
  '.side.wav',
  '._side.wav',
  '~side.wav',
  '#side.wav#',
  'side.wav~',
  'side.wav.part',
  'side.wav.PART',
  'side.wav.partial',
  'side.wav.filepart',
  'side.wav.tmp',
  'side.wav.crdownload',
  'side.wav.download',
  'side.wav.!ut',
])('%s is a name of something that is not yet whole', (name) => {
  expect(isTemporaryName(name)).toBe(true);
});

test.each(['side.wav', 'side.part.wav', 'part.wav', 'a~b.wav', 'tmp', 'side a #2.wav'])(
  '%s is a name of its own',
  (name) => {
    expect(isTemporaryName(name)).toBe(false);
  },
);
