import { mkdir, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { OutputError } from '../../errors.js';
import { jsonText } from '../../report/json-text.js';
import { safeText } from '../../report/safe-text.js';
import { writeFileAtomic } from '../../report/write-atomic.js';
import { isSystemError, reasonText } from '../../report/write-failure.js';
import {
  type WatchedDocument,
  type WatchedHead,
  watchedHeadSchema,
  watchedSchema,
} from './watched-schema.js';

/**
 * Puts a report in its place, whole or not at all, and makes the folders for it.
 * @throws OutputError
 */
export async function writeReport(path: string, report: WatchedDocument): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true });
  } catch (cause) {
    if (!isSystemError(cause)) throw cause;
    const message = `${safeText(dirname(path))}: cannot be made, ${reasonText(cause)}`;
    throw new OutputError(message, { cause });
  }
  await writeFileAtomic(path, `${jsonText(report, 2)}\n`);
}

/** A report that was written before; null for whatever is none of this version. */
export async function readReport(path: string): Promise<WatchedDocument | null> {
  const parsed = watchedSchema.safeParse(await jsonIn(path));
  return parsed.success ? parsed.data : null;
}

/** The same, as far as the watch has to know it; also of another version. */
export async function readReportHead(path: string): Promise<WatchedHead | null> {
  const parsed = watchedHeadSchema.safeParse(await jsonIn(path));
  return parsed.success ? parsed.data : null;
}

async function jsonIn(path: string): Promise<unknown> {
  try {
    return JSON.parse(await readFile(path, 'utf8'));
  } catch {
    // Not there, not readable or no JSON: then there is no report, and one will be made.
    return null;
  }
}
