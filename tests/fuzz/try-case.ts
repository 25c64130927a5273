import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parseAccepted } from '../../src/accepted/parse-accepted.js';
import { InputError, UsageError } from '../../src/errors.js';
import { parseRules } from '../../src/intake/read-rules.js';
import { decodeMotion } from '../../src/motion-file/decode-motion.js';
import { parseProfile } from '../../src/profile/profile-file.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { FAILURE_CODES } from '../../src/report/failure.js';
import { parseSheet } from '../../src/sheet/read-sheet.js';
import { copyHolds } from '../support/copy-holds.js';
import type { FuzzCase } from './fuzz-case.js';
import { allIsRead, forecastIsWhole, savedIsWhole, tracksFromMarks } from './try-sound.js';

/** What a message may take on a terminal, a line of it. */
const LONGEST_LINE = 1000;

/**
 * Does with a file all that furrow does with one.
 * @param folder to put it into
 * @param forecast whether it is forecast as well, which is ten times as dear as all else
 * @returns `read`, the code of its refusal, or `usage` where a document is wrong
 * @throws whatever else was thrown, which is a bug, or an Error that says what does not hold
 */
export async function tryCase(
  { good, bytes }: FuzzCase,
  folder: string,
  forecast: boolean,
): Promise<string> {
  try {
    switch (good.kind) {
      case 'motion':
        savedIsWhole(decodeMotion('side.motion', bytes));
        break;
      case 'profile':
        resolveProfile({ file: parseProfile('x.json', textOf(bytes)) });
        break;
      case 'sheet':
        parseSheet('x.json', textOf(bytes));
        break;
      case 'rules':
        await parseRules(parseProfile('x.json', textOf(bytes)));
        break;
      case 'accepted':
        parseAccepted('x.json', textOf(bytes));
        break;
      default:
        await trySound(bytes, folder, forecast);
    }
    return 'read';
  } catch (error) {
    return refusalOf(error);
  }
}

async function trySound(bytes: Uint8Array, folder: string, forecast: boolean): Promise<void> {
  const path = join(folder, 'side.wav');
  await writeFile(path, bytes);
  const container = await allIsRead(path);
  if (container === 'RIFF' || container === 'RF64' || container === 'BW64') {
    await copyHolds(path, join(folder, 'copy.wav'));
    await tracksFromMarks(path);
  }
  if (forecast) await forecastIsWhole(path);
}

function textOf(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('utf8');
}

/** The code of a refusal that is as was promised. */
function refusalOf(error: unknown): string {
  if (error instanceof InputError) {
    const { code, message } = error;
    if (!FAILURE_CODES.includes(code)) throw new Error(`the code ${code} is not listed`);
    if (!/: found .*, expected .*; .+/.test(message)) throw amiss('says too little', error);
    if (!/^[\x20-\x7e…–µ]+$/.test(message)) throw amiss('has bytes of the file in it', error);
    return code;
  }
  if (!(error instanceof UsageError)) throw error;
  const longest = Math.max(...error.message.split('\n').map(({ length }) => length));
  if (longest > LONGEST_LINE) throw amiss(`has a line of ${longest} letters`, error);
  return 'usage';
}

function amiss(what: string, cause: Error): Error {
  return new Error(`the message ${what}: ${JSON.stringify(cause.message.slice(0, 300))}`, {
    cause,
  });
}
