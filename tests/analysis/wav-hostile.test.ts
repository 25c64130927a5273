import { execFile } from 'node:child_process';
import { chmod, mkdir, symlink, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, onTestFinished, test } from 'vitest';
import { badSample, convertSamples } from '../../src/analysis/convert-samples.js';
import { readFrames } from '../../src/analysis/wav-blocks.js';
import { withWav } from '../../src/analysis/wav-file.js';
import { InputError } from '../../src/errors.js';
import { HOSTILE_WAVS } from '../support/hostile-wavs.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { chunk, formatChunk, riff, wavBytes } from '../support/wav-writer.js';

/** Reads and converts a file to its end, as the analysis does. */
async function readAll(path: string): Promise<{ frames: number; truncated: boolean }> {
  return await withWav(path, async (wav) => {
    let frames = 0;
    for await (const block of readFrames(wav, { blockBytes: 64 })) {
      const bytesPerFrame = (wav.file.format.bitDepth / 8) * wav.file.format.channels;
      const here = block.length / bytesPerFrame;
      const unfit = convertSamples(block, wav.file.format, new Float64Array(2 * here));
      if (unfit >= 0) throw badSample(wav.file, frames + unfit);
      frames += here;
    }
    expect(frames).toBe(wav.file.frames);
    return { frames, truncated: wav.file.truncated };
  });
}

async function errorOf(path: string): Promise<InputError> {
  const outcome = await readAll(path).catch((error: unknown) => error);
  if (outcome instanceof InputError) return outcome;
  throw new Error('not refused as an input', { cause: outcome });
}

describe('a file that lies is refused by its code, or read as far as it goes', () => {
  test.each(HOSTILE_WAVS)('$name', async ({ bytes, expected }) => {
    const path = join(await temporaryFolder(), 'side.wav');
    await writeFile(path, bytes);
    if (typeof expected !== 'string') {
      expect(await readAll(path)).toEqual({ frames: expected.truncatedTo, truncated: true });
      return;
    }
    const error = await errorOf(path);
    expect(error.code).toBe(expected);
    expect(error.path).toBe(path);
    expect(error.message).toMatch(/side\.wav: byte \d+.*: found .+, expected .+; .+/);
    expect(error.message, 'no byte of the file as it is').not.toMatch(/\p{Cc}/u);
  });

  test('the place in the message is that of the field that is wrong', async () => {
    const path = join(await temporaryFolder(), 'six.wav');
    await writeFile(path, riff([formatChunk({ channels: 6 }), chunk('data', new Uint8Array(24))]));
    // "fmt " begins at byte 12, its content at 20, the channel count two bytes on.
    expect((await errorOf(path)).message).toContain('byte 22: found 6 channels, expected 1 or 2');
  });

  test('the message of an unfit sample names its frame and byte', async () => {
    const path = join(await temporaryFolder(), 'nan.wav');
    const words = Array.from({ length: 40 }, (_, word) => (word === 35 ? Number.NaN : 0));
    await writeFile(path, wavBytes({ encoding: 'float', bitDepth: 32, words }));
    expect((await errorOf(path)).message).toContain('byte 180 (frame 17): found a sample');
  });
});

describe('what is no regular file is refused at once', () => {
  test('a folder', async () => {
    const path = join(await temporaryFolder(), 'folder.wav');
    await mkdir(path);
    expect((await errorOf(path)).code).toBe('not-a-file');
  });

  test('a pipe that nobody writes to', async () => {
    const path = join(await temporaryFolder(), 'pipe.wav');
    await promisify(execFile)('mkfifo', [path]);
    expect((await errorOf(path)).code).toBe('not-a-file');
  });

  test('a socket', async () => {
    const path = join(await temporaryFolder(), 'socket.wav');
    const server = createServer();
    await new Promise<void>((listening) => server.listen(path, listening));
    onTestFinished(() => void server.close());
    expect((await errorOf(path)).code).toBe('not-a-file');
  });

  test('a device', async () => {
    expect((await errorOf('/dev/zero')).code).toBe('not-a-file');
  });

  test('nothing, a link to nothing, a path through a file, a name too long', async () => {
    const folder = await temporaryFolder();
    await symlink('nowhere', join(folder, 'link.wav'));
    await writeFile(join(folder, 'file'), '');
    for (const name of ['missing.wav', 'link.wav', 'file/side.wav', 'x'.repeat(300), 'a\0b']) {
      expect((await errorOf(join(folder, name))).code).toBe('not-found');
    }
  });

  test('a file without permission', async () => {
    const path = join(await temporaryFolder(), 'locked.wav');
    await writeFile(path, wavBytes({ words: [0, 0] }), { mode: 0o000 });
    await chmod(join(path, '..'), 0o755);
    // The superuser may read anything, so it becomes somebody else for a moment.
    if (process.geteuid?.() === 0) {
      process.seteuid?.(65_534);
      onTestFinished(() => process.seteuid?.(0));
    }
    expect((await errorOf(path)).code).toBe('no-permission');
  });
});
