import { openAiff } from './aiff-file.js';
import { openFlac } from './flac-file.js';
import { frameBytes } from './sample-format.js';
import type { OpenSound, SoundFile } from './sound-file.js';
import { shownId, wavError } from './wav-error.js';
import { openWav } from './wav-file.js';
import { wavFrames } from './wav-frames.js';
import { type ByteSource, readBytes, withSource } from './wav-source.js';

/**
 * Opens a file of sound, hands it to `use` and closes it, whatever happens. What it is, its first
 * bytes decide, whatever its name: WAV, AIFF, AIFF-C or FLAC.
 * @throws InputError if it cannot be read, is none of these, or is not fit
 */
export async function withSound<T>(
  path: string,
  use: (sound: OpenSound) => Promise<T>,
): Promise<T> {
  return await withSource(path, async (source) => {
    const id = String.fromCharCode(...(await readBytes(source, 0, 4)));
    if (id === 'RIFF' || id === 'RF64' || id === 'BW64') return await use(await wavSound(source));
    if (id === 'FORM') return await use(await openAiff(source));
    if (id === 'fLaC' || id.startsWith('ID3')) return await use(await openFlac(source));
    throw wavError(path, {
      // One code for whatever is no sound at all, as scripts know it.
      code: 'not-wav',
      at: 0,
      found: source.size === 0 ? 'an empty file' : shownId(id),
      expected: '"RIFF", "RF64" or "BW64" of WAV, "FORM" of AIFF, or "fLaC" of FLAC',
      remedy: 'export it as a WAV, AIFF or FLAC file',
    });
  });
}

/** The head alone. */
export async function readSoundHead(path: string): Promise<SoundFile> {
  return await withSound(path, async ({ file }) => file);
}

async function wavSound(source: ByteSource): Promise<OpenSound> {
  const wav = await openWav(source);
  return {
    file: wav.file,
    source: wavFrames(wav),
    bytesPerFrame: frameBytes(wav.file.format),
  };
}
