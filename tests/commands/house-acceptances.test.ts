import { PassThrough } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { houseAcceptances } from '../../src/commands/house-acceptances.js';
import { standardError } from '../../src/commands/standard-error.js';
import type { ForecastedFile } from '../../src/forecast-result.js';
import { filledFolder } from '../support/filled-folder.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const SOUND = 'a'.repeat(64);
const OVERCUT = findingWith({
  id: 'overcut',
  severity: 'fault',
  atSeconds: 10,
  untilSeconds: 12,
  value: -1e-6,
  limit: 0,
});
const LIST = JSON.stringify({
  format: 'furrow.accepted/1',
  accepted: [
    {
      id: 'overcut',
      side: 'a.wav',
      fromSeconds: 10,
      untilSeconds: 12,
      severity: 'fault',
      value: -1e-6,
      reason: 'kisses',
      audioSha256: SOUND,
    },
  ],
});

/** What becomes of a path's forecast beside that list: its verdict, else why the entry is void. */
async function verdictOf(path: string, changes: Partial<ForecastedFile>): Promise<string> {
  const cwd = await filledFolder([['furrow.accepted.json', Buffer.from(LIST)]]);
  const errors = standardError(new PassThrough(), { isQuiet: true, isTerminal: false });
  const { apply } = await houseAcceptances([path], cwd, errors);
  const file = forecastedFile(
    { audioSha256: SOUND, ...changes },
    { verdict: 'fault', findings: [OVERCUT] },
  );
  const { forecast, voidAcceptances = [] } = apply(path, file);
  return voidAcceptances[0]?.why ?? forecast.verdict;
}

describe('what was accepted of a WAV holds for its motion, saved beside it', () => {
  test.each([
    ['under the name of the WAV', 'a.motion', { name: 'a.wav' }, 'clear'],
    ['whatever the motion is called', 'kept.motion', { name: 'a.wav' }, 'clear'],
    ['by its sound, if the WAV was called otherwise', 'c.motion', { name: 'b.wav' }, 'clear'],
    [
      'not of another sound',
      'a.motion',
      { name: 'a.wav', audioSha256: 'b'.repeat(64) },
      'audio-changed',
    ],
    ['not of an unknown sound', 'a.motion', { name: 'a.wav', audioSha256: null }, 'audio-unknown'],
  ] as const)('%s', async (_, path, changes, expected) => {
    expect(await verdictOf(path, { readFrom: 'motion', ...changes })).toBe(expected);
  });
});

test('what was accepted of a WAV holds for no other file of sound, even of the same sound', async () => {
  expect(await verdictOf('a.wav', { name: 'a.wav' })).toBe('clear');
  expect(await verdictOf('b.wav', { name: 'b.wav' })).toBe('fault');
});
