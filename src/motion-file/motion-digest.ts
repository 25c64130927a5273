import { createHash } from 'node:crypto';
import { DIGEST_AT, HEAD_AT } from './motion-layout.js';

/** The SHA-256 that the bytes of a motion file should carry: of all bytes but its own. */
export function digestOf(bytes: Uint8Array): Uint8Array {
  const hash = createHash('sha256');
  return hash.update(bytes.subarray(0, DIGEST_AT)).update(bytes.subarray(HEAD_AT)).digest();
}
