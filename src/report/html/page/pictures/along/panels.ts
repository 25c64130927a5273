import { BINS_PER_QUARTER } from '../../../../../analysis/motion.js';
import { binLand } from '../../../../../model/bin-land.js';
import { cutDepth } from '../../../../../model/groove.js';
import { SHARE_LIMIT } from '../../../../../model/limits.js';
import type { Plan } from '../../../../../model/plan.js';
import { landTolerance, quarterStart } from '../../../../../model/planned-side.js';
import { traceWalls } from '../../../../../model/tracing.js';
import type { Verified } from '../../../../../model/verify.js';
import { bendShares } from '../../../../../model/worst-second.js';
import { fixed, lengthText, lpiText, shareText } from '../../../../length-text.js';
import type { PageSide } from '../../page-side.js';
import type { Row } from './column-extremes.js';

/** Whose a line is, or what it shows besides; each has its own ink and stroke. */
export type LineInk = 'machine' | 'plan' | 'fixed' | 'second';

export interface PanelLine {
  readonly name: string;
  readonly ink: LineInk;
  readonly row: Row;
  readonly shows: 'least' | 'most' | 'both';
  /** What is told at the cursor, where that is not the row itself. */
  readonly told?: Row;
}

export interface PanelLimit {
  readonly name: string;
  readonly value: number;
}

/** One quantity along the side. */
export interface Panel {
  readonly id: 'pitch' | 'land' | 'width' | 'depth' | 'bend' | 'facet' | 'low-band';
  readonly title: string;
  readonly lines: readonly PanelLine[];
  readonly limits: readonly PanelLimit[];
  /** Which of the lines the verdict is about. */
  readonly judged: number;
  /** Least and largest value that the axis shows; what lies beyond is drawn at its edge. */
  readonly domain: readonly [low: number, high: number];
  /** What the axis counts in. */
  readonly scale: 'length' | 'pitch' | 'percent' | 'ratio';
  readonly valueText: (value: number) => string;
}

/** Everything that is drawn along the side; limits are those of the profile. */
export function panelsOf(page: PageSide): Panel[] {
  return [
    pitchPanel(page),
    landPanel(page),
    widthPanel(page),
    depthPanel(page),
    bendPanel(page),
    facetPanel(page),
    lowBandPanel(page),
  ];
}

function pitchPanel({ side, machine, plan, executed, settings, units }: PageSide): Panel {
  const row = ({ pitch }: Plan) => quarterRow(side, pitch);
  const lines: PanelLine[] = [
    { name: 'machine', ink: 'machine', row: row(machine.plan), shows: 'both' },
    { name: 'plan', ink: 'plan', row: row(plan.plan), shows: 'both' },
  ];
  if (settings.executes === 'fixed') {
    lines.push({ name: 'fixed', ink: 'fixed', row: row(executed.plan), shows: 'both' });
  }
  const widest = largest(...lines.map((line) => line.row.values));
  return {
    id: 'pitch',
    judged: 0,
    title: 'Pitch',
    lines,
    limits: [
      { name: 'base', value: settings.basePitch },
      ...(widest > 0.7 * settings.pitchMax ? [{ name: 'widest', value: settings.pitchMax }] : []),
    ],
    domain: [0.8 * settings.basePitch, 1.08 * Math.max(widest, 1.2 * settings.basePitch)],
    scale: 'pitch',
    valueText: (value) => `${lengthText(value, units)}, ${lpiText(value)}`,
  };
}

function landPanel({ side, machine, plan, executed, settings, units }: PageSide): Panel {
  const line = (ink: LineInk, verified: Verified): PanelLine => ({
    name: ink,
    ink,
    row: binRow(side, binLand(side, verified.plan)),
    shows: 'least',
    // The quarter turn's, as everywhere else that land is told of a place along the side.
    told: quarterRow(side, verified.land),
  });
  const lines = [line('machine', machine), line('plan', plan)];
  if (settings.executes === 'fixed') lines.push(line('fixed', executed));
  const least = -largest(executed.land.map((land) => -land));
  const { landMin, basePitch, baseWidth } = settings;
  const unmodulated = basePitch - baseWidth - landTolerance(settings);
  const top = 1.5 * Math.max(unmodulated, 2 * landMin);
  return {
    id: 'land',
    judged: lines.findIndex(({ ink }) => ink === settings.executes),
    title: 'Land, the least',
    lines,
    limits: [
      { name: 'to be kept', value: landMin },
      { name: '', value: 0 },
    ],
    domain: [Math.min(1.1 * least, -0.06 * top), top],
    scale: 'length',
    valueText: (value) => lengthText(value, units),
  };
}

function widthPanel({ side, executed, settings, units }: PageSide): Panel {
  const ink = settings.executes;
  const { widthMin, widthMax } = executed;
  return {
    id: 'width',
    judged: 0,
    title: 'Width, least and most',
    lines: [
      { name: 'least', ink, row: quarterRow(side, widthMin), shows: 'least' },
      { name: 'most', ink, row: quarterRow(side, widthMax), shows: 'most' },
    ],
    limits: [{ name: 'least', value: settings.widthMin }],
    domain: [Math.min(0, -1.1 * largest(widthMin.map((w) => -w))), 1.1 * largest(widthMax)],
    scale: 'length',
    valueText: (value) => lengthText(value, units),
  };
}

function depthPanel({ side, executed, settings, units }: PageSide): Panel {
  const depth = executed.widthMax.map((width) => cutDepth(width, settings.bottomRadius));
  const deepest = largest(depth);
  return {
    id: 'depth',
    judged: 0,
    title: 'Cut depth, the deepest',
    lines: [{ name: '', ink: settings.executes, row: quarterRow(side, depth), shows: 'most' }],
    limits:
      deepest > 0.5 * settings.depthMax ? [{ name: 'deepest', value: settings.depthMax }] : [],
    domain: [0, 1.1 * Math.max(deepest, settings.depthMax / 2)],
    scale: 'length',
    valueText: (value) => lengthText(value, units),
  };
}

function bendPanel({ side, executed, settings, units }: PageSide): Panel {
  const share = (tip: number): Row => ({
    values: bendShares(side, executed.plan, tip).own,
    from: 0,
    step: side.quarterSeconds,
  });
  const sphere = share(settings.playbackTip);
  return {
    id: 'bend',
    judged: 0,
    title: 'Bends tighter than a tip, share of each quarter turn',
    lines: [
      {
        name: `${lengthText(settings.playbackTip, units)} sphere`,
        ink: settings.executes,
        row: sphere,
        shows: 'most',
      },
      {
        name: `${lengthText(settings.lineTip, units)} line tip`,
        ink: 'second',
        row: share(settings.lineTip),
        shows: 'most',
      },
    ],
    limits: [{ name: 'tolerable', value: SHARE_LIMIT }],
    domain: [0, 1.1 * Math.max(2 * SHARE_LIMIT, largest(sphere.values))],
    scale: 'percent',
    valueText: (value) => shareText(value),
  };
}

function facetPanel({ side, executed, settings }: PageSide): Panel {
  const { facet } = traceWalls(side, executed.plan);
  return {
    id: 'facet',
    judged: 0,
    title: 'Slope of the steepest edge; at 1 the facets rub',
    lines: [{ name: '', ink: settings.executes, row: quarterRow(side, facet), shows: 'most' }],
    limits: [
      { name: 'caution', value: settings.facetCaution },
      { name: 'fault', value: settings.facetFault },
    ],
    domain: [0, 1.1 * Math.max(settings.facetFault, largest(facet))],
    scale: 'ratio',
    valueText: (value) => fixed(value, 2),
  };
}

function lowBandPanel({ side, motion, executed, settings, units }: PageSide): Panel {
  const { gain } = executed.plan;
  const values = motion.lowBand.verticalAmplitude
    .slice(0, side.programCount)
    .map((amplitude) => gain * amplitude);
  const limit = (settings.baseWidth - settings.widthMin) / 4;
  return {
    id: 'low-band',
    judged: 0,
    title: `Vertical motion under ${settings.lowBandHz} Hz`,
    lines: [
      {
        name: '',
        ink: settings.executes,
        row: { values, from: 0, step: side.quarterSeconds },
        shows: 'most',
      },
    ],
    limits: [{ name: 'much', value: limit }],
    domain: [0, 1.1 * Math.max(limit, largest(values), 1e-6)],
    scale: 'length',
    valueText: (value) => lengthText(value, units),
  };
}

function quarterRow(side: PageSide['side'], values: Float64Array): Row {
  return { values, from: quarterStart(side, 0), step: side.quarterSeconds };
}

function binRow(side: PageSide['side'], values: Float64Array): Row {
  return { values, from: quarterStart(side, 0), step: side.quarterSeconds / BINS_PER_QUARTER };
}

/** 0 for no finite value at all. */
function largest(...rows: readonly Float64Array[]): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const row of rows) for (const value of row) if (value > most) most = value;
  return Number.isFinite(most) ? most : 0;
}
