import type { Writable } from 'node:stream';
import { OutputError } from '../errors.js';

/** Who read stdout has left, as `head` does; no more is wanted and nothing is wrong. */
export class ClosedPipe extends Error {
  override readonly name = 'ClosedPipe';
}

/** The one writer of stdout. */
export interface StandardOutput {
  /** Resolves when the text is handed over; ClosedPipe or OutputError if it cannot be. */
  readonly write: (text: string) => Promise<void>;
}

export function standardOutput(stream: Writable): StandardOutput {
  // Each write hears of its failure; without a listener the stream would end the process first.
  stream.on('error', () => {});
  return {
    write: async (text) => {
      if (text === '') return;
      await new Promise<void>((resolve, reject) => {
        stream.write(text, (cause) => {
          if (cause === null || cause === undefined) resolve();
          else reject(asOurs(cause));
        });
      });
    },
  };
}

/** The same for a run that goes on for a file's sake: who has left hears no more, and all is done. */
export function outlasting({ write }: StandardOutput): StandardOutput {
  let hasLeft = false;
  return {
    write: async (text) => {
      if (hasLeft) return;
      await write(text).catch((error: unknown) => {
        if (!(error instanceof ClosedPipe)) throw error;
        hasLeft = true;
      });
    },
  };
}

function asOurs(cause: Error): Error {
  const code = 'code' in cause ? cause.code : null;
  if (code === 'EPIPE' || code === 'ERR_STREAM_DESTROYED') return new ClosedPipe('', { cause });
  return new OutputError(`standard output cannot be written: ${cause.message}`, { cause });
}
