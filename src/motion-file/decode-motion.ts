import {
  BINS_PER_QUARTER,
  begun,
  type MotionSummary,
  QUARTERS_PER_TURN,
} from '../analysis/motion.js';
import { emptyWall } from '../analysis/wall-rows.js';
import { COLUMNS } from './motion-columns.js';
import { motionError } from './motion-error.js';
import type { MotionHead } from './motion-head.js';
import { HEAD_AT } from './motion-layout.js';
import { readHead } from './read-head.js';
import type { SavedMotion } from './saved-motion.js';
import { unpackColumn } from './unpack-column.js';

/** A turn that is nearly whole frames is taken as such, which makes it longer by far less. */
const SAME_TURN = 1e-9;

/**
 * What the bytes of a motion file hold. Whatever bytes they are, they give a summary that is whole
 * and finite, or an InputError; nothing is believed that is not checked, and no more is unpacked
 * than the head's number of quarters, which is limited, can need.
 * @param path as the user gave it, for messages and as the source's path
 * @throws InputError `not-motion`, `motion-version`, `motion-damaged` where the checksum does not
 *   hold, `bad-motion` where it does and the content contradicts itself
 */
export function decodeMotion(path: string, bytes: Uint8Array): SavedMotion {
  const { head, headBytes } = readHead(path, bytes);
  const motion = emptySummary(head);
  if (head.quarterCount !== wantedQuarters(head)) {
    throw contradiction(path, `${head.quarterCount} quarter turns`, `${wantedQuarters(head)}`);
  }
  const { turnSeconds, settings } = head;
  if (!(Math.abs((turnSeconds * settings.rpm) / 60 - 1) < SAME_TURN)) {
    throw contradiction(path, `a turn of ${turnSeconds} s`, `${60 / settings.rpm} s`);
  }
  let at = HEAD_AT + headBytes;
  for (const [index, { name, type, of }] of COLUMNS.entries()) {
    const length = head.columns[index]?.bytes ?? 0;
    const wrong = unpackColumn(bytes.subarray(at, at + length), type, of(motion));
    if (wrong !== null) throw contradiction(path, `${wrong} in column ${name}`, 'a whole column');
    at += length;
  }
  if (at !== bytes.length) throw contradiction(path, `${bytes.length} bytes`, `${at}`);
  const { name, source, truncated, audioSha256 } = head;
  return { name, source: { path, ...source }, truncated, settings, audioSha256, motion };
}

/** Quarters of a summary: those of all begun turns and of one turn of silence after them. */
function wantedQuarters({ durationSeconds, turnSeconds }: MotionHead): number {
  return QUARTERS_PER_TURN * (begun(durationSeconds / turnSeconds) + 1);
}

function emptySummary(head: MotionHead): MotionSummary {
  const { turnSeconds, durationSeconds, quarterCount, program } = head;
  const bins = (): Float64Array => new Float64Array(quarterCount * BINS_PER_QUARTER);
  const quarters = (): Float64Array => new Float64Array(quarterCount);
  return {
    turnSeconds,
    durationSeconds,
    quarterCount,
    approach: bins(),
    approachLoose: bins(),
    lift: bins(),
    sink: bins(),
    lateral: bins(),
    outward: bins(),
    inward: bins(),
    left: emptyWall(quarterCount),
    right: emptyWall(quarterCount),
    lowBand: {
      correlation: quarters(),
      phase: quarters(),
      verticalShare: quarters(),
      strongestFrequency: quarters(),
      verticalAmplitude: quarters(),
      lateralAmplitude: quarters(),
    },
    program,
  };
}

function contradiction(path: string, found: string, expected: string): Error {
  const remedy = 'save the motion again';
  return motionError(path, { code: 'bad-motion', found, expected, remedy });
}
