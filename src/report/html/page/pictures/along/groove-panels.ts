import { cutDepth } from '../../../../../model/groove.js';
import { lengthText } from '../../../../length-text.js';
import type { PageSide } from '../../page-side.js';
import { largest, type Panel, quarterRow } from './panel.js';

/** Least and most width of the groove that is cut. */
export function widthPanel({ side, executed, settings, units }: PageSide): Panel {
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

/** How deep it is cut at most. */
export function depthPanel({ side, executed, settings, units }: PageSide): Panel {
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
