import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readSoundHead } from '../../src/analysis/open-sound.js';
import { temporaryFolder } from '../support/temporary-folder.js';

test.each([
  ['nothing', '', 'an empty file'],
  ['other letters', 'OggS', '"OggS"'],
])('a file with %s in it is no sound, and says what was found', async (_, content, found) => {
  const path = join(await temporaryFolder(), 'side.wav');
  await writeFile(path, content);
  await expect(readSoundHead(path)).rejects.toMatchObject({
    code: 'not-wav',
    message: expect.stringContaining(found),
  });
});
