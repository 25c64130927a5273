import { deflateSync } from 'node:zlib';
import type { HotSpotEdges } from '../../../analysis/hot-spot-edges.js';
import type { MotionSummary } from '../../../analysis/motion.js';
import type { ForecastedFile } from '../../../forecast-result.js';
import type { Units } from '../../length-text.js';
import { formatsFor, innermostOf } from '../formats.js';
import { microscopePlaces } from '../microscope-places.js';
import { codeEdges, edgeSteps } from './code-edge.js';
import { codeMotion } from './code-motion.js';
import { keepMotion } from './keep-motion.js';
import { leastAsked } from './least-asked.js';
import { joinPageBytes } from './page-bytes.js';
import type { KeptSpot, PageHead } from './page-head.js';
import { toPrintable } from './printable.js';
import { rangeEncoder } from './range-coder.js';

/** The levels that a page offers, dB; a side that was asked for further out widens them. */
const LEVELS = { least: -12, most: 6 };

export interface PageDataOptions {
  readonly units: Units;
  /** How the command that made the page begins; its files are the sources. */
  readonly command?: readonly string[];
  /** What the command was given; else the sources' paths. */
  readonly paths?: readonly string[];
}

/**
 * Everything a page needs to forecast its side anew: deflated (RFC 1950, whose
 * checksum tells damage from data), as printable text.
 * @param edges for each of microscopePlaces, in order; null where there are none
 */
export function pageData(
  file: ForecastedFile & { readonly motion: MotionSummary },
  edges: readonly (HotSpotEdges | null)[],
  options: PageDataOptions,
): string {
  const { motion, settings, forecast } = file;
  const most = Math.max(LEVELS.most, forecast.levelDb);
  const asked = leastAsked(settings, innermostOf(formatsFor(settings)), most);
  const kept = keepMotion(motion, asked);
  const coder = rangeEncoder();
  codeMotion(coder, kept);
  codeEdges(
    coder,
    edges
      .flatMap((edge) => edge?.turns ?? [])
      .flatMap(({ inner, outer }) => [inner, outer].map(edgeSteps)),
  );
  const head = headOf(file, edges, { options, most, leastClasses: kept.leastClasses });
  const bytes = joinPageBytes(JSON.stringify(head), coder.finish());
  return toPrintable(deflateSync(bytes, { level: 9 }));
}

interface HeadOptions extends Pick<PageHead, 'leastClasses'> {
  readonly options: PageDataOptions;
  /** The highest level that is offered, dB. */
  readonly most: number;
}

function headOf(
  file: ForecastedFile & { readonly motion: MotionSummary },
  edges: readonly (HotSpotEdges | null)[],
  { options, most, leastClasses }: HeadOptions,
): PageHead {
  const { name, sources, readFrom, settings, program, forecast } = file;
  const { turnSeconds, durationSeconds, quarterCount } = file.motion;
  return {
    name,
    sources,
    truncated: forecast.findings.some(({ id }) => id === 'truncated'),
    readFrom,
    settings,
    program,
    hand: file.hand ?? null,
    motion: { turnSeconds, durationSeconds, quarterCount },
    leastClasses,
    levelDb: forecast.levelDb,
    planner: forecast.planner,
    units: options.units,
    levels: { least: Math.min(LEVELS.least, forecast.levelDb), most },
    headroom: forecast.headroom,
    tightest: forecast.tightest,
    survives: forecast.hotSpots.map(({ atSeconds, survives }) => ({
      atSeconds,
      speed: survives?.speed ?? null,
    })),
    accepted: forecast.findings.filter(({ accepted }) => accepted !== undefined),
    command: options.command ?? ['furrow', 'forecast'],
    paths: options.paths ?? sources.map(({ path }) => path),
    spots: microscopePlaces(file).flatMap(({ atSeconds }, at) => keptSpots(atSeconds, edges[at])),
  };
}

function keptSpots(spotSeconds: number, edge: HotSpotEdges | null | undefined): KeptSpot[] {
  if (edge === null || edge === undefined) return [];
  const { atSeconds, secondsPerSample, turns } = edge;
  const samples = turns[0]?.inner.length ?? 0;
  const places = turns.map(({ turnsFromSpot }) => turnsFromSpot);
  return [{ spotSeconds, atSeconds, secondsPerSample, samples, turns: places }];
}
