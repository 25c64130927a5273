import type { Failure } from './failure.js';

export interface ClientFailure {
  readonly problem: string;
  /** Goes on from `What to send instead:`; null where the client can do nothing. */
  readonly instead: string | null;
}

/** One code stands for whatever is no sound at all; of an empty file the message says so. */
const EMPTY = /: byte 0: found an empty file, expected /;

/** Why a file could not be looked at, as far as the client can do something about it. */
export function clientFailure({ code, message }: Failure): ClientFailure {
  if (code === 'not-wav' && EMPTY.test(message)) {
    return {
      problem: 'The file is empty; the transfer broke off.',
      instead: 'the same file again.',
    };
  }
  switch (code) {
    case 'not-wav':
    case 'not-aiff':
    case 'not-flac':
      return { problem: 'This is not a WAV file, nor AIFF or FLAC.', instead: 'a WAV file.' };
    case 'bad-header':
    case 'no-format':
    case 'no-data':
    case 'bad-sample':
    case 'sound-damaged':
      return { problem: 'The file is damaged.', instead: 'the file exported anew.' };
    case 'bad-encoding':
      return {
        problem: 'The file holds its sound in a form that cannot be read here.',
        instead: 'an ordinary WAV file, such as 24-bit PCM.',
      };
    case 'bad-channels':
      return { problem: 'The file is neither stereo nor mono.', instead: 'a stereo file.' };
    case 'bad-rate':
      return {
        problem: 'The file has an unusual sampling rate.',
        instead: 'the original at its own rate, such as 44.1, 48 or 96 kHz.',
      };
    case 'overlong':
      return { problem: 'The file is longer than any side.', instead: 'one file a side.' };
    case 'empty-folder':
      return { problem: 'There is no WAV file in this folder.', instead: 'the WAV files.' };
    default:
      return {
        problem:
          'This could not be read. The cutting room will look into it; there is nothing for you to ' +
          'do yet.',
        instead: null,
      };
  }
}
