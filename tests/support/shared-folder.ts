import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** A new folder for all tests of a `describe`, from within its `beforeAll`; gone after them. */
export function sharedFolder(): () => Promise<string> {
  let folder: Promise<string> | undefined;
  afterAll(async () => {
    if (folder !== undefined) await rm(await folder, { recursive: true, force: true });
  });
  return () => {
    folder ??= mkdtemp(join(tmpdir(), 'furrow-test-'));
    return folder;
  };
}
