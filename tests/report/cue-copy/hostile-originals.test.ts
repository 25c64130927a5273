// Whatever bytes of a file are wrong: tests/fuzz.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { copyHolds } from '../../support/copy-holds.js';
import { HOSTILE_WAVS } from '../../support/hostile-wavs.js';
import { temporaryFolder } from '../../support/temporary-folder.js';

const BREAKS_OFF = HOSTILE_WAVS.filter(({ expected }) => typeof expected !== 'string');

test.each(BREAKS_OFF)('$name: its copy is without fault and has the same frames', async (wav) => {
  const folder = await temporaryFolder();
  const path = join(folder, 'side.wav');
  await writeFile(path, wav.bytes);
  await expect(copyHolds(path, join(folder, 'copy.wav'))).resolves.toBeUndefined();
});
