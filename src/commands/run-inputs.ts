import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { FoundInput } from '../analysis/found-input.js';
import type { Failure } from '../report/failure.js';

/** A file to forecast, or what has failed already and keeps its place. */
export type RunInput = string | Failure;

/** The inputs of a run; an empty list is a failure like an empty folder. */
export function runInputs(found: readonly FoundInput[], allowEmpty: boolean): RunInput[] {
  const inputs = found.flatMap((input): RunInput[] => {
    if (input.kind === 'file') return [input.path];
    if (input.kind === 'failure') {
      const { path, code, message } = input.error;
      return [{ path, code, message }];
    }
    const message = `${input.path}: no WAV, AIFF, FLAC or motion file is in this folder`;
    return allowEmpty ? [] : [{ path: input.path, code: 'empty-folder', message }];
  });
  if (found.length > 0 || allowEmpty) return inputs;
  return [{ path: '-', code: 'empty-folder', message: '--files-from: the list names no file' }];
}

/** The files among the inputs. */
export function filesOf(inputs: readonly RunInput[]): string[] {
  return inputs.filter((input) => typeof input === 'string');
}

/** Bytes of the files there are; what cannot be looked at will be told when it is its turn. */
export async function totalBytes(files: readonly string[], cwd: string): Promise<number> {
  let bytes = 0;
  for (const file of files) {
    bytes += await stat(resolve(cwd, file)).then(
      ({ size }) => size,
      () => 0,
    );
  }
  return bytes;
}
