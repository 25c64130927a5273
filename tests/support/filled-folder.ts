import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { SideFile } from './side-files.js';
import { temporaryFolder } from './temporary-folder.js';

/** A new folder of this test's own with these files; names may have folders. */
export async function filledFolder(files: readonly SideFile[]): Promise<string> {
  const folder = await temporaryFolder();
  for (const [name, bytes] of files) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), bytes);
  }
  return folder;
}
