import { SHARE_LIMIT } from '../../../../../model/limits.js';
import { traceWalls } from '../../../../../model/tracing.js';
import { bendShares } from '../../../../../model/worst-second.js';
import { fixed, lengthText, shareText } from '../../../../length-text.js';
import type { PageSide } from '../../page-side.js';
import { largest, type Panel, programRow, quarterRow } from './panel.js';

/** For how much of each quarter turn bends are too tight for a tip, at the diameter reached. */
export function bendPanel({ side, executed, settings, units }: PageSide): Panel {
  const share = (tip: number) => programRow(side, bendShares(side, executed.plan, tip).own);
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

/** The steepest edge against the groove speed there. */
export function facetPanel({ side, executed, settings }: PageSide): Panel {
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

/** What the bass lifts and sinks. */
export function lowBandPanel({ side, motion, executed, settings, units }: PageSide): Panel {
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
        row: programRow(side, values),
        shows: 'most',
      },
    ],
    limits: [{ name: 'much', value: limit }],
    domain: [0, 1.1 * Math.max(limit, largest(values), 1e-6)],
    scale: 'length',
    valueText: (value) => lengthText(value, units),
  };
}
