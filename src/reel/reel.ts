import type { ForecastedFile } from '../forecast-result.js';
import { type ExecutedColumns, executedColumns } from '../model/executed-columns.js';
import type { HotSpot } from '../model/forecast-types.js';
import type { OpenSide } from '../open-side.js';
import type { Hertz, Metres, Seconds } from '../units.js';
import { type HardPassage, hardestPassages } from './hardest-passages.js';
import { withQuietEdges } from './quiet-edges.js';
import { reelFormat } from './reel-frames.js';
import { type ReelLayout, type ReelPlace, reelLayout } from './reel-layout.js';
import { type TestCut, type TestPlace, testCut } from './test-cut.js';
import type { Look } from './worst-second.js';

/** The hardest passages of a side, where they lie in a reel, and how each is cut. */
export interface Reel {
  readonly file: ForecastedFile;
  readonly layout: ReelLayout;
  readonly passages: readonly ReelPassage[];
  readonly sampleRate: Hertz;
  readonly isFloat: boolean;
  readonly bitDepth: number;
  /** Whether a filter on the difference of a track is in the samples already. */
  readonly isFiltered: boolean;
}

export interface ReelPassage {
  readonly place: ReelPlace;
  readonly cut: TestCut;
  /** The hardest first. */
  readonly hard: readonly HardPlace[];
  /** Start of the quarter turn with the least land, program time. */
  readonly leastAtSeconds: Seconds;
  /** What the same quarter turn has on the side, whose pitch and depth are not fixed. */
  readonly leastOnSide: Metres;
}

export interface HardPlace {
  readonly look: Look;
  /** In the program: of a hot spot its place, else the start of the quarter turn. */
  readonly atSeconds: Seconds;
  readonly predicted: TestPlace;
  /** What is known of the place with the least land, where it is one of the forecast's. */
  readonly spot: HotSpot | null;
  /** Of the worst sample of the quarter turn. */
  readonly facet: number;
  readonly bend: number;
}

/** The reel of a side; without passages where nothing moves. */
export async function reelOf({ source }: OpenSide, file: ForecastedFile): Promise<Reel> {
  const columns = executedColumns(file.forecast, file.settings, file.hand);
  const passages: HardPassage[] = [];
  for (const passage of hardestPassages(columns, file.settings)) {
    passages.push(await withQuietEdges(passage, source));
  }
  const layout = reelLayout(passages, source.format, source.frames, file.settings);
  const format = reelFormat(source);
  return {
    file,
    layout,
    passages: layout.places.flatMap((place): ReelPassage[] => {
      const cut = testCut(place.passage, columns, file.settings);
      return cut === null ? [] : [reelPassage(place, cut, file, columns)];
    }),
    sampleRate: format.sampleRate,
    isFloat: format.encoding === 'float',
    bitDepth: format.bitDepth,
    isFiltered: file.hand?.tracks.some(({ elliptical }) => elliptical !== undefined) === true,
  };
}

function reelPassage(
  place: ReelPlace,
  cut: TestCut,
  { forecast }: ForecastedFile,
  columns: ExecutedColumns,
): ReelPassage {
  const { quarterSeconds } = columns;
  return {
    place,
    cut,
    hard: place.passage.seconds.flatMap(({ look, quarter }, at): HardPlace[] => {
      const predicted = cut.places[at];
      if (predicted === undefined) return [];
      const from = quarter * quarterSeconds;
      const spot = forecast.hotSpots.find(
        ({ atSeconds }) => atSeconds >= from - 1e-6 && atSeconds < from + quarterSeconds,
      );
      const isSpot = look === 'land' && spot !== undefined;
      return [
        {
          look,
          atSeconds: isSpot ? spot.atSeconds : from,
          predicted,
          spot: isSpot ? spot : null,
          facet: columns.facet[quarter] ?? 0,
          bend: columns.bend[quarter] ?? Number.NaN,
        },
      ];
    }),
    leastAtSeconds: cut.least.quarter * quarterSeconds,
    leastOnSide: columns.land[cut.least.quarter] ?? Number.NaN,
  };
}
