import { resolve } from 'node:path';
import { OutputError } from '../errors.js';
import type { IntakeResult } from '../intake/intake-result.js';
import type { MixedFolder } from '../intake/mixed-folders.js';
import { checkOutputFile } from '../report/check-output.js';
import type { Failure } from '../report/failure.js';
import type { FailLevel, JunitCase } from '../report/junit.js';
import type { Units } from '../report/length-text.js';
import { writeFileAtomic } from '../report/write-atomic.js';
import type { StandardError } from './standard-error.js';

/** Where --junit is written. */
export interface JunitOutput {
  readonly take: (result: IntakeResult | Failure) => void;
  readonly folder: (folder: MixedFolder) => void;
  /** After the last; whether it could be written, and if not, that is said. */
  readonly end: (errors: StandardError) => Promise<boolean>;
}

export interface JunitFacts {
  /** From which severity on findings fail a test case; null: none does. */
  readonly level: FailLevel;
  readonly units: Units;
  /** The files of the run, which are never written over. */
  readonly read: readonly string[];
  readonly cwd: string;
}

/**
 * The output of --junit; none without the option.
 * @throws UsageError where it cannot be written
 */
export async function openJunit(
  path: string | undefined,
  { level, units, read, cwd }: JunitFacts,
): Promise<JunitOutput> {
  if (path === undefined) return { take: () => {}, folder: () => {}, end: async () => true };
  const target = path === '' ? '' : resolve(cwd, path);
  const inputs = read.map((file) => resolve(cwd, file));
  await checkOutputFile(target, { inputs, option: '--junit' });
  const { junitCase, junitError, junitFolder, junitXml } = await import('../report/junit.js');
  const cases: JunitCase[] = [];
  return {
    take: (result) => {
      cases.push('code' in result ? junitError(result) : junitCase(result, level, units));
    },
    folder: (folder) => {
      cases.push(junitFolder(folder, level));
    },
    end: async (errors) => {
      try {
        await writeFileAtomic(target, junitXml(cases));
        return true;
      } catch (error) {
        if (!(error instanceof OutputError)) throw error;
        errors.error(error.message);
        return false;
      }
    },
  };
}
