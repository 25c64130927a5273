import { isMotion } from './is-motion.js';
import { digestOf } from './motion-digest.js';
import { type MotionFault, motionError } from './motion-error.js';
import { type MotionHead, motionHeadSchema } from './motion-head.js';
import {
  DIGEST_AT,
  HEAD_AT,
  HEAD_BYTES_AT,
  MOST_HEAD_BYTES,
  VERSION,
  VERSION_AT,
} from './motion-layout.js';

export interface HeadOfMotion {
  readonly head: MotionHead;
  readonly headBytes: number;
}

/** The head of a motion file, after everything that can be checked before it is believed. */
export function readHead(path: string, bytes: Uint8Array): HeadOfMotion {
  const refuse = (fault: MotionFault) => motionError(path, fault);
  if (!isMotion(bytes)) throw refuse(NOT_MOTION);
  if (bytes.length < HEAD_AT)
    throw refuse(damaged(`${bytes.length} bytes`, `more than ${HEAD_AT}`));
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const version = view.getUint32(VERSION_AT, true);
  // The digest of a later version may lie elsewhere, so its number comes first.
  if (version > VERSION) throw refuse(laterVersion(version));
  const digest = bytes.subarray(DIGEST_AT, HEAD_AT);
  if (Buffer.compare(digest, digestOf(bytes)) !== 0) throw refuse(DAMAGED);
  if (version !== VERSION) throw refuse(earlierVersion(version));
  const headBytes = view.getUint32(HEAD_BYTES_AT, true);
  if (headBytes > MOST_HEAD_BYTES || HEAD_AT + headBytes > bytes.length) {
    throw refuse(badHead(`a head of ${headBytes} bytes`));
  }
  const parsed = motionHeadSchema.safeParse(jsonIn(bytes.subarray(HEAD_AT, HEAD_AT + headBytes)));
  if (parsed.success) return { head: parsed.data, headBytes };
  const [issue] = parsed.error.issues;
  const place = issue?.path.join('.') ?? '';
  throw refuse(badHead(`a head with a wrong ${place === '' ? 'form' : place}`));
}

/** undefined for what is no JSON as UTF-8. */
function jsonIn(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return undefined;
  }
}

const NOT_MOTION: MotionFault = {
  code: 'not-motion',
  found: 'other first bytes',
  expected: 'those of a motion file',
  remedy: 'name a WAV file, or save the motion again',
};

function damaged(found: string, expected: string): MotionFault {
  const remedy = 'copy it again, or save the motion again';
  return { code: 'motion-damaged', found, expected, remedy };
}

const DAMAGED = damaged('content that its checksum does not fit', 'the content that was saved');

function laterVersion(version: number): MotionFault {
  return {
    code: 'motion-version',
    found: `a motion file of version ${version}`,
    expected: `version ${VERSION}`,
    remedy: 'use a later furrow, or save the motion again with this one',
  };
}

/** What an earlier furrow did not look for cannot be told of it. */
function earlierVersion(version: number): MotionFault {
  return {
    code: 'motion-version',
    found: `a motion file of version ${version}`,
    expected: `version ${VERSION}`,
    remedy: 'save the motion again from the audio with this furrow',
  };
}

function badHead(found: string): MotionFault {
  return {
    code: 'bad-motion',
    found,
    expected: `one of version ${VERSION}`,
    remedy: 'save the motion again',
  };
}
