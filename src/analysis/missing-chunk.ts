import { shownId, wavError } from './wav-error.js';
import type { ByteSource } from './wav-source.js';

/** What a walk over a file's chunks says of the last one it came to. */
interface Walked {
  readonly last: { readonly id: string; readonly at: number; readonly size: number } | null;
}

/** The error of a WAV or AIFF file that ends without a chunk it must have. */
export function missingChunk(
  source: ByteSource,
  { last }: Walked,
  code: 'no-format' | 'no-data',
  expected: string,
): Error {
  const whither =
    last === null
      ? ''
      : ` after chunk ${shownId(last.id)} at byte ${last.at} of ${last.size} bytes`;
  return wavError(source.path, {
    code,
    at: source.size,
    found: `the end of the file${whither}`,
    expected: `a ${expected} chunk`,
    remedy: 'the file is damaged or not finished: export it again',
  });
}
