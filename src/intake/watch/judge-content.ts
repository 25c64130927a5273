import { join } from 'node:path';
import { InputError } from '../../errors.js';
import type { Failure } from '../../report/failure.js';
import type { IntakeFileJson } from '../../report/intake-schema.js';
import { hashFile } from './hash-file.js';
import type { KnownFiles } from './known-files.js';
import { readReport } from './report-file.js';
import type { WatchSetup } from './watch-setup.js';

/** What is said of a file. */
export interface Judged {
  /** null: its bytes could not be read. */
  readonly sha256: string | null;
  readonly said: IntakeFileJson | Failure;
  /** The path under which the same bytes were examined; null: they were examined now. */
  readonly from: string | null;
}

interface InWork {
  readonly path: string;
  readonly said: Promise<IntakeFileJson | Failure>;
}

/** Results that are remembered until they are found in their reports. */
const REMEMBERED = 64;

/**
 * Judges files by what is in them: bytes that were examined under another name, in this run or an
 * earlier one, are not examined again, unless the name makes a difference.
 * @returns takes a path in the folder; never rejects
 */
export function contentJudge(
  setup: WatchSetup,
  known: KnownFiles,
): (path: string) => Promise<Judged> {
  const recent = new Map<string, InWork>();

  const before = async (sha256: string, path: string) => {
    const now = recent.get(sha256);
    if (now !== undefined && setup.isNamedAlike(now.path, path)) {
      return { from: now.path, said: await now.said };
    }
    const file = known.withContent(sha256);
    if (file === undefined || !setup.isNamedAlike(file.path, path)) return null;
    // The report may have been changed or taken away since it was written.
    const report = await readReport(join(setup.out, file.place));
    if (report?.file.sha256 !== sha256 || report.examinedWith !== setup.examinedWith) return null;
    return report.result === null ? null : { from: file.path, said: report.result };
  };

  return async (path) => {
    const full = join(setup.folder, path);
    let sha256: string | null = null;
    try {
      sha256 = await hashFile(full);
      const same = await before(sha256, path);
      if (same !== null && !('code' in same.said)) {
        return { sha256, said: under(path, same.said), from: same.from };
      }
      const said = setup.examine(full);
      if (setup.isNamedAlike(path, path)) recent.set(sha256, { path, said });
      const oldest = recent.size > REMEMBERED ? recent.keys().next().value : undefined;
      if (oldest !== undefined) recent.delete(oldest);
      const now = await said;
      return {
        sha256,
        said: 'code' in now ? shown(now, full, path) : under(path, now),
        from: null,
      };
    } catch (error) {
      return { sha256, said: shown(failureOf(error, full), full, path), from: null };
    }
  };
}

function under(path: string, result: IntakeFileJson): IntakeFileJson {
  const { source } = result;
  return { ...result, path, source: source === null ? null : { ...source, path } };
}

function failureOf(error: unknown, full: string): Failure {
  if (error instanceof InputError) {
    return { path: full, code: error.code, message: error.message };
  }
  const reason = error instanceof Error ? error.message : String(error);
  const message = `${full}: this is a bug in furrow, not in the file; please report it: ${reason}`;
  return { path: full, code: 'crashed', message };
}

/** A failure as it is told: by the path in the folder. */
function shown(failure: Failure, full: string, path: string): Failure {
  return { ...failure, path, message: failure.message.replaceAll(full, () => path) };
}
