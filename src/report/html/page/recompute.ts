import type { HotSpotEdges } from '../../../analysis/hot-spot-edges.js';
import type { ForecastedFile } from '../../../forecast-result.js';
import { executedPlanner } from '../../../model/executed-planner.js';
import { forecastPlans, type SideRequest } from '../../../model/forecast-model.js';
import type { Headroom, SideForecast, SourceFacts } from '../../../model/forecast-types.js';
import { headroom } from '../../../model/level.js';
import { plannedSide } from '../../../model/planned-side.js';
import { NOTHING_BY_HAND } from '../../../model/side-plan-input.js';
import type { PageHead } from '../data/page-head.js';
import type { PageData } from '../data/read-page-data.js';
import { withAccepted } from './accepted.js';
import type { PageSide } from './page-side.js';
import { settingsOf, type WhatIf } from './what-if.js';

/** What the page shows of a side at one moment. */
export interface Recomputed {
  readonly side: PageSide;
  /** The same as the reports take it. */
  readonly file: ForecastedFile;
}

/** Two places are one if they round to the same bin. */
const SAME_PLACE = 1e-6;

/**
 * The side with what is tried, by the model that the command uses.
 * @param known what takes longest; headroom is the same at every level
 */
export function recompute(
  data: PageData,
  whatIf: WhatIf,
  known: Pick<SideRequest, 'headroom' | 'tightest'>,
): Recomputed {
  const { head, motion, rows } = data;
  const { levelDb, planner, units } = whatIf;
  const settings = settingsOf(head, whatIf);
  const source = sourceFacts(head);
  const hand = head.hand ?? NOTHING_BY_HAND;
  const request = { levelDb, planner, source, hand, rows, ...known };
  const planned = forecastPlans(motion, settings, request);
  const { side, machine, plan, executed } = planned;
  const forecast = withAccepted(planned.forecast, head.accepted);
  const microscope = forecast.hotSpots.map(({ atSeconds }) => edgesAt(data, atSeconds));
  const { name, sources, readFrom, program } = head;
  return {
    side: {
      name,
      settings,
      motion,
      side,
      machine,
      plan,
      executed,
      forecast,
      units,
      microscope,
    },
    file: {
      name,
      sources,
      readFrom,
      program,
      settings,
      forecast,
      motion: null,
      audioSha256: null,
      hand,
    },
  };
}

/** The headroom of what is tried; it does not depend on the level that is tried. */
export function headroomOf({ head, motion, rows }: PageData, whatIf: WhatIf): Headroom {
  const settings = settingsOf(head, whatIf);
  const side = plannedSide(motion, settings, head.hand ?? NOTHING_BY_HAND, rows);
  return headroom(side, executedPlanner(settings, whatIf.planner));
}

/** Tells what a headroom holds for. */
export function headroomKey({ tried, planner }: WhatIf): string {
  return JSON.stringify([tried, tried.executes === 'plan' ? planner : null]);
}

/** The forecast as written, with what its hot spots survive, for which the audio was asked. */
export function withSurvivedSpeed(forecast: SideForecast, { survives }: PageHead): SideForecast {
  const hotSpots = forecast.hotSpots.map((spot) => {
    const known = survives.find(({ atSeconds }) => isSamePlace(atSeconds, spot.atSeconds));
    if (known === undefined || spot.survives === null) return spot;
    return { ...spot, survives: { ...spot.survives, speed: known.speed } };
  });
  return { ...forecast, hotSpots };
}

function edgesAt({ spots }: PageData, atSeconds: number): HotSpotEdges | null {
  return spots.find(({ spotSeconds }) => isSamePlace(spotSeconds, atSeconds))?.edges ?? null;
}

/** Of a side of several files, those of the poorest. */
function sourceFacts({ sources, truncated }: PageHead): SourceFacts {
  const isStereo = sources.some(({ channels }) => channels === 2);
  const sampleRate = Math.min(...sources.map((source) => source.sampleRate));
  return { sampleRate, channels: isStereo ? 2 : 1, truncated };
}

function isSamePlace(one: number, other: number): boolean {
  return Math.abs(one - other) < SAME_PLACE;
}
