import { linesPerInch, MICROMETRE, MIL } from '../../../../../units.js';
import type { Units } from '../../../../length-text.js';
import { svg } from '../paint/svg.js';
import { roundTicks } from '../paint/ticks.js';
import type { Panel } from './panel.js';

/** Where the plots of all panels lie, CSS pixels: the same time is the same x in each. */
export interface PlotFrame {
  readonly width: number;
  /** Factor on the heights of the panels: less on paper. */
  readonly tallness: number;
  readonly left: number;
  readonly plotWidth: number;
}

/** CSS pixels; pitch and land are what the eye looks for first. */
const HEIGHTS: Readonly<Record<Panel['id'], number>> = {
  pitch: 112,
  land: 112,
  width: 72,
  depth: 56,
  bend: 56,
  facet: 56,
  'low-band': 56,
};
const TICK_ROOM = 24;

export function panelHeight({ id }: Panel, { tallness }: PlotFrame): number {
  return Math.round(HEIGHTS[id] * tallness);
}

/** What a panel shows, and what its axis counts in. */
export function panelTitle({ title, scale }: Panel, units: Units): string {
  const small = units === 'us' ? 'mil' : 'µm';
  switch (scale) {
    case 'length':
      return `${title}, ${small}`;
    case 'pitch':
      return `${title}, ${small} (right: LPI)`;
    case 'percent':
      return `${title}, %`;
    case 'ratio':
      return title;
  }
}

/** Ticks of a panel with a hair each; lines per inch to the right of a pitch. */
export function panelAxis(
  document: Document,
  panel: Panel,
  { left, plotWidth, tallness }: PlotFrame,
  yOf: (value: number) => number,
  units: Units,
): Node[] {
  const unit = axisUnit(panel.scale, units);
  const [low, high] = panel.domain;
  const count = (HEIGHTS[panel.id] * tallness) / TICK_ROOM;
  const right = left + plotWidth;
  return roundTicks(low / unit, high / unit, count).flatMap((tick) => {
    const y = yOf(tick * unit);
    const label = { class: 'label', y: y + 4 };
    return [
      svg(document, 'line', { class: 'hair', x1: left, x2: right, y1: y, y2: y }),
      svg(document, 'text', { ...label, x: left - 6, 'text-anchor': 'end' }, String(tick)),
      ...(panel.scale === 'pitch' && tick > 0
        ? [svg(document, 'text', { ...label, x: right + 6 }, linesPerInch(tick * unit).toFixed(0))]
        : []),
    ];
  });
}

function axisUnit(scale: Panel['scale'], units: Units): number {
  switch (scale) {
    case 'length':
    case 'pitch':
      return units === 'us' ? MIL : MICROMETRE;
    case 'percent':
      return 0.01;
    case 'ratio':
      return 1;
  }
}
