import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import type { TestContext } from 'vitest';

/** Where Debian's package fretsonfire-songs-sectoid puts its songs (MIT licence). */
export const SONGS_FOLDER = '/usr/share/games/fretsonfire/data/songs/sectoid';

/**
 * Debian's package of each program: those that the recordings in tests/reference-signals come from,
 * the shells that completion is tried in, and what gives them and the command a terminal.
 */
const PACKAGE_OF = {
  sox: 'sox',
  ffmpeg: 'ffmpeg',
  bash: 'bash',
  zsh: 'zsh',
  fish: 'fish',
  script: 'bsdutils',
  strace: 'strace',
  tmux: 'tmux',
  xmllint: 'libxml2-utils',
} as const;

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
  if (!hasProgram(program)) refuse(context, program, PACKAGE_OF[program]);
}

/** The same for the songs. */
export function needSongs(context: TestContext): void {
  if (!existsSync(SONGS_FOLDER)) refuse(context, 'the songs', 'fretsonfire-songs-sectoid');
}

function refuse(context: TestContext, what: string, debianPackage: string): void {
  const advice = `${what} not found: install Debian's package ${debianPackage}`;
  if (isCi()) throw new Error(advice);
  context.skip(advice);
}

/** True on the machine that must not skip. */
export function isCi(): boolean {
  const { CI } = process.env;
  return CI === 'true';
}
