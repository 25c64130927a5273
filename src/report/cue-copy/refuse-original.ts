import { realpath, stat } from 'node:fs/promises';
import type { OpenWav } from '../../analysis/wav-file.js';
import { UsageError } from '../../errors.js';
import { safeText } from '../safe-text.js';

/**
 * Never onto the original, whatever leads to it: the open file's device and number are compared,
 * and the real paths, for systems that number files loosely.
 * @throws UsageError
 */
export async function refuseOriginal({ source }: OpenWav, target: string): Promise<void> {
  const [found, original] = await Promise.all([
    stat(target, { bigint: true }).catch(() => null),
    source.handle.stat({ bigint: true }),
  ]);
  if (found === null) return;
  const isSame = found.dev === original.dev && found.ino === original.ino;
  if (!isSame && (await realOf(target)) !== (await realOf(source.path))) return;
  const message = `${safeText(target)} is the original ${safeText(source.path)}`;
  throw new UsageError(`${message}: a copy with marks never replaces it; name another folder`);
}

async function realOf(path: string): Promise<string> {
  return realpath(path).catch(() => path);
}
