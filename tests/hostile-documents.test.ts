// Documents that someone else may have put there: a profile, a sheet, a list of accepted findings.
import { execFile } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { parseAccepted } from '../src/accepted/parse-accepted.js';
import { readAccepted } from '../src/accepted/read-accepted.js';
import { UsageError } from '../src/errors.js';
import { parseProfile, readProfile } from '../src/profile/profile-file.js';
import { readText } from '../src/profile/read-text.js';
import { resolveProfile } from '../src/profile/resolve-profile.js';
import { parseSheet } from '../src/sheet/read-sheet.js';
import { temporaryFolder } from './support/temporary-folder.js';

const READERS = {
  profile: (text: string) => resolveProfile({ file: parseProfile('x.json', text) }),
  'side sheet': (text: string) => parseSheet('x.json', text),
  'list of accepted findings': (text: string) => parseAccepted('x.json', text),
};

describe.each(Object.entries(READERS))('a %s', (kind, read) => {
  test('nested to whatever depth is refused as such, and the stack never runs out', () => {
    for (const depth of [101, 500, 1000, 1500, 2000, 2500, 3000, 3500, 5000, 150_000]) {
      for (const [open, close] of [
        ['[', ']'],
        ['{"a":', '}'],
      ] as const) {
        const text = `{"b":${open.repeat(depth)}1${close.repeat(depth)}}`;
        expect(() => read(text), `${depth}`).toThrow(`is nested too deeply to be a ${kind}`);
      }
    }
  });

  test('of tens of thousands of unknown fields, some are told and the number of the others', () => {
    const fields = Array.from({ length: 40_000 }, (_, index) => `"pitch${index}":${index}`);
    const lines = messageOf(() => read(`{${fields.join(',\n')}}`)).split('\n');
    expect(lines.length).toBeLessThan(50);
    expect(lines.at(-1)).toMatch(/^x\.json(:1)?: 399\d\d more like these$/);
  });

  test('a name of any length is told at a length that can be read, and looked up at once', () => {
    const message = messageOf(() => read(`{"${'pitch'.repeat(150_000)}": 1}`));
    for (const line of message.split('\n')) expect(line.length).toBeLessThan(200);
    expect(message).toContain('pitchpitch');
    const twice = messageOf(() => read(`{"${'x'.repeat(900)}": 1, "${'x'.repeat(900)}": 2}`));
    expect(twice).toMatch(/x….* is set twice|x…: found an unknown field/);
    expect(twice.length).toBeLessThan(400);
  });
});

describe('a file that is no regular one is never waited for', () => {
  test('a pipe that nobody writes to', async () => {
    const folder = await temporaryFolder();
    const pipe = join(folder, 'furrow.accepted.json');
    await promisify(execFile)('mkfifo', [pipe]);
    const words = 'it is a pipe or a device';
    await expect(readAccepted(folder)).rejects.toThrow(`as accepted findings: ${words}`);
    await expect(readProfile(pipe)).rejects.toThrow(`cannot be read as a profile: ${words}`);
  });

  test('a device without end', async () => {
    await expect(readProfile('/dev/zero')).rejects.toThrow('it is a pipe or a device');
  });

  test('a file that is too large is not read', async () => {
    const path = join(await temporaryFolder(), 'x.json');
    await writeFile(path, 'äb');
    expect(await readText(path, 3)).toBe('äb');
    await expect(readText(path, 2)).rejects.toThrow('it is larger than 2 bytes');
  });
});

function messageOf(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    if (error instanceof UsageError) return error.message;
    throw error;
  }
  throw new Error('nothing was refused');
}
