// SHA-256 against coreutils' sha256sum.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { expect, test } from 'vitest';
import { hashFile } from '../../../src/intake/watch/hash-file.js';
import { temporaryFolder } from '../../support/temporary-folder.js';

test.each([0, 1, 2 ** 20 - 1, 2 ** 20, 2 ** 20 + 1, 3_000_000])(
  'the hash of %i bytes is that of sha256sum',
  async (length) => {
    const path = join(await temporaryFolder(), 'side.wav');
    await writeFile(
      path,
      Uint8Array.from({ length }, (_, at) => (at * at) >> 3),
    );
    const { stdout } = await execa('sha256sum', [path]);
    expect(await hashFile(path)).toBe(stdout.split(' ')[0]);
  },
);
