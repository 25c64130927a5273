import { convertSamples } from '../../src/analysis/convert-samples.js';
import { withSound } from '../../src/analysis/open-sound.js';
import { frameBytes } from '../../src/analysis/sample-format.js';
import type { SoundContainer } from '../../src/analysis/sound-file.js';
import { withWav } from '../../src/analysis/wav-file.js';
import { readLayout } from '../../src/analysis/wav-layout.js';
import { forecastMotion } from '../../src/forecast-motion.js';
import { forecastFile } from '../../src/forecast-side.js';
import type { SavedMotion } from '../../src/motion-file/saved-motion.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { existingCues } from '../../src/report/cue-copy/existing-cues.js';
import { sideToJson } from '../../src/report/side-json.js';
import { sideSchema } from '../../src/report/side-schema.js';
import { cuePlaces } from '../../src/sheet/cue-places.js';
import { parseSheet } from '../../src/sheet/read-sheet.js';
import { sheetFromCues } from '../../src/sheet/sheet-from-cues.js';

const SETTINGS = resolveProfile();
const REQUEST = { levelDb: 0, planner: 'turn-ahead' } as const;

/** Reads a sound to its end, sample by sample: as many frames as its head, checked, promises. */
export async function allIsRead(path: string): Promise<SoundContainer> {
  return await withSound(path, async ({ file, source, bytesPerFrame }) => {
    let frames = 0;
    for await (const block of source.read()) {
      const here = block.length / frameBytes(file.format);
      const unfit = convertSamples(block, file.format, new Float64Array(2 * here));
      if (unfit >= 0) throw source.refuse(frames + unfit);
      frames += here;
    }
    if (frames !== file.frames) throw new Error(`${frames} frames of ${file.frames}`);
    if (!(bytesPerFrame > 0)) throw new Error(`${bytesPerFrame} bytes a frame`);
    return file.container;
  });
}

/** The forecast of a sound keeps to the published schema, in which nothing is but finite. */
export async function forecastIsWhole(path: string): Promise<void> {
  const file = await forecastFile(path, SETTINGS, REQUEST);
  sideSchema.parse(sideToJson(file, { quarters: true }));
}

/** The same of saved motion. */
export function savedIsWhole(saved: SavedMotion): void {
  const file = forecastMotion(saved, SETTINGS, REQUEST);
  sideSchema.parse(sideToJson(file, { quarters: true }));
}

/** Whatever marks a WAV file has, the sheet that is made of them can be read, and hides nothing. */
export async function tracksFromMarks(path: string): Promise<void> {
  await withWav(path, async (wav) => {
    const { pieces } = await readLayout(wav);
    const places = cuePlaces(await existingCues(wav, pieces), wav.file.frames);
    if (places.length === 0) return;
    const sheet = sheetFromCues('side.wav', 'side.wav', places, wav.file.frames);
    if (/[^\n\P{Cc}]|[\p{Bidi_Control}\u2028\u2029]/u.test(sheet)) {
      throw new Error(`the sheet has control characters: ${JSON.stringify(sheet)}`);
    }
    const [side] = parseSheet('x.json', sheet).sheet.sides;
    if (side?.tracks.length !== places.length + (places[0]?.sample === 0 ? 0 : 1)) {
      throw new Error('the sheet has other tracks');
    }
  });
}
