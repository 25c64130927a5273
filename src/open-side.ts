import { basename } from 'node:path';
import type { FrameSource } from './analysis/frame-source.js';
import { withSound } from './analysis/open-sound.js';
import type { SoundFile } from './analysis/sound-file.js';
import type { SourceFile } from './forecast-result.js';
import type { SourceFacts } from './model/forecast-types.js';
import type { HandSettings } from './model/side-plan-input.js';
import type { ProgramSide, TrackFile } from './program/program-side.js';
import { refuseOverlong } from './refuse-overlong.js';
import type { Settings } from './settings.js';

/** What a side is made from: the path of a file, or tracks as a sheet has them. */
export type SideInput = string | ProgramSide;

/** A side whose files are open. */
export interface OpenSide {
  readonly name: string;
  readonly source: FrameSource;
  readonly sources: readonly SourceFile[];
  readonly facts: SourceFacts;
  /** What the operator sets along it; only of a sheet's side. */
  readonly hand?: HandSettings;
  /** What the analysis is to do: a source may have filtered its tracks itself. */
  readonly analysed: Settings;
  /** Bytes of sound that a frame stands for in the files. */
  readonly bytesPerFrame: number;
}

/**
 * Opens what a side is made from, hands it to `use` and closes it, whatever happens.
 * @throws InputError if a file cannot be read or is not fit
 */
export async function withSide<T>(
  input: SideInput,
  settings: Settings,
  use: (side: OpenSide) => Promise<T>,
): Promise<T> {
  if (typeof input === 'string') {
    return await withSound(input, async ({ file, source, bytesPerFrame }) => {
      const { format, truncated } = file;
      refuseOverlong(input, format, source.frames, settings);
      return await use({
        name: basename(input),
        source,
        sources: [sourceOf(file)],
        facts: { sampleRate: format.sampleRate, channels: format.channels, truncated },
        analysed: settings,
        bytesPerFrame,
      });
    });
  }
  // Loaded only where there is a sheet.
  const { withProgram } = await import('./program/with-program.js');
  refuseOverlong(input.sheet, input.format, input.frames, settings);
  return await withProgram(input, async (source) => await use(openProgram(input, source)));
}

function openProgram(side: ProgramSide, source: FrameSource): OpenSide {
  const { name, tracks, format, hand, settings } = side;
  const files = [...new Map(tracks.map(({ file }) => [file.path, file])).values()];
  const isFiltered = tracks.some(({ elliptical }) => elliptical !== null);
  const bytes = tracks.reduce(
    (sum, { file, firstFrame, endFrame }) => sum + (endFrame - firstFrame) * file.bytesPerFrame,
    0,
  );
  return {
    name,
    source,
    sources: files.map(sourceOf),
    facts: {
      sampleRate: Math.min(...files.map((file) => file.format.sampleRate)),
      channels: format.channels,
      truncated: tracks.some(({ file, endFrame }) => file.truncated && endFrame === file.frames),
    },
    hand,
    analysed: isFiltered ? { ...settings, ellipticalHz: null } : settings,
    bytesPerFrame: bytes / side.frames,
  };
}

function sourceOf({ path, container, format, frames }: SoundFile | TrackFile): SourceFile {
  return { path, container, ...format, frames, durationSeconds: frames / format.sampleRate };
}
