import { spawnSync } from 'node:child_process';
import type { TestContext } from 'vitest';

/** Debian's package of each program that the recordings in tests/reference-signals come from. */
const PACKAGE_OF = { sox: 'sox', ffmpeg: 'ffmpeg' } as const;

export type OutsideProgram = keyof typeof PACKAGE_OF;

/** True where the program runs. */
export function hasProgram(program: OutsideProgram): boolean {
  return spawnSync(program, ['--help'], { stdio: 'ignore' }).error === undefined;
}

/**
 * Ends a live comparison where the program is missing: the test is skipped and says what to
 * install; with CI=true it fails, so that a machine without the program cannot pass for one on
 * which the comparison held.
 */
export function needProgram(program: OutsideProgram, context: TestContext): void {
  if (hasProgram(program)) return;
  const advice = `${program} is missing: install Debian's package ${PACKAGE_OF[program]}`;
  if (isCi()) throw new Error(advice);
  context.skip(advice);
}

/** True on the machine that must not skip. */
export function isCi(): boolean {
  const { CI } = process.env;
  return CI === 'true';
}
