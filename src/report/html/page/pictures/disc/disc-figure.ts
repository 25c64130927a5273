import type { PlanReport } from '../../../../../model/forecast-types.js';
import { valueAt } from '../../../../../model/nodes.js';
import { INCH, MILLIMETRE } from '../../../../../units.js';
import { largeLengthText } from '../../../../length-text.js';
import type { PageSide } from '../../page-side.js';
import { linePath } from '../paint/path-text.js';
import { html, svg } from '../paint/svg.js';
import { pitchRings } from './pitch-rings.js';
import { spiralPoints } from './spiral-points.js';

/** Narrowest ring that is drawn by itself, m. */
const RING = 0.4 * MILLIMETRE;
/** Turns of the lead-in that are shown. */
const LEAD_IN_TURNS = 1.5;

export interface DiscFigure {
  readonly picture: SVGSVGElement;
  readonly caption: HTMLElement;
  /** Units of the picture in a metre. */
  readonly perMetre: number;
}

/** In millimetres about the centre of the disc. */
export function discFigure(document: Document, page: PageSide): DiscFigure {
  const { settings, units, forecast } = page;
  const report = forecast[settings.executes];
  const mm = (metres: number) => metres / MILLIMETRE;
  const radius = mm((settings.disc * INCH) / 2);
  const circle = (name: string, diameter: number) =>
    svg(document, 'circle', { class: name, r: Math.max(0, mm(diameter / 2)).toFixed(2) });
  const picture = svg(
    document,
    'svg',
    {
      viewBox: `${-radius - 1} ${-radius - 1} ${2 * radius + 2} ${2 * radius + 2}`,
      role: 'img',
      'aria-label': discWords(page, report),
    },
    circle('lacquer', settings.disc * INCH),
    ...programRings(document, page),
    ...bandRings(document, page),
    ...leadGrooves(document, page, report),
    circle('finishing', settings.finishingDiameter),
    ...(settings.preferredEndDiameter === null
      ? []
      : [circle('preferred', settings.preferredEndDiameter)]),
    circle(report.fits ? 'limit' : 'limit passed', settings.innerDiameter),
    circle(`end ${settings.executes}`, report.endDiameter),
    svg(document, 'circle', { class: 'hole', r: 3.6 }),
  );
  const entry = (name: string, words: string) => html(document, 'li', { class: name }, words);
  const caption = html(
    document,
    'ul',
    {},
    entry(
      'program',
      `program ${largeLengthText(report.startDiameter, units)} to ${endText(report, units)}`,
    ),
    entry(
      report.fits ? 'limit' : 'limit passed',
      `inner limit ${largeLengthText(settings.innerDiameter, units)}`,
    ),
    ...(settings.preferredEndDiameter === null
      ? []
      : [
          entry(
            'preferred',
            `preferred end ${largeLengthText(settings.preferredEndDiameter, units)}`,
          ),
        ]),
    ...(page.side.hand.bands.length === 0 ? [] : [entry('band', 'marker bands')]),
    entry('lead', 'lead-in, lead-out'),
    entry('finishing', `finishing groove ${largeLengthText(settings.finishingDiameter, units)}`),
  );
  return { picture, caption, perMetre: 1 / MILLIMETRE };
}

function endText({ endDiameter }: PlanReport, units: PageSide['units']): string {
  return endDiameter > 0 ? largeLengthText(endDiameter, units) : 'past the centre';
}

function discWords({ settings, units }: PageSide, report: PlanReport): string {
  const spare = largeLengthText(Math.abs(report.spare), units);
  return (
    `${settings.disc}-inch disc from above: program from diameter ` +
    `${largeLengthText(report.startDiameter, units)} to ${endText(report, units)}, ` +
    `${report.fits ? `${spare} of radius spare` : `${spare} of radius over the inner limit`}`
  );
}

/** The wider the pitch, the less ink, as on a disc in slanting light. */
function programRings(document: Document, { side, executed, settings }: PageSide): Node[] {
  const rings = pitchRings(side, executed.plan, RING);
  // As planned: a marker band is wider by far, and has its own ring.
  const widest = executed.plan.pitch.reduce((most, pitch) => Math.max(most, pitch));
  const spread = Math.max(widest - settings.basePitch, 0.2 * settings.basePitch);
  return rings.map(({ outer, inner, pitch }) => {
    const open = Math.min(Math.max((pitch - settings.basePitch) / spread, 0), 1);
    return svg(document, 'circle', {
      class: 'program',
      r: ((outer + inner) / 2 / MILLIMETRE).toFixed(3),
      // A little wider than the ring, so that no seams are seen between them.
      'stroke-width': ((outer - inner) / MILLIMETRE + 0.15).toFixed(3),
      stroke: `color-mix(in srgb, var(--ink) ${(74 - 54 * open).toFixed(1)}%, var(--paper))`,
    });
  });
}

/** Marker bands between tracks: bare but for their few turns. */
function bandRings(document: Document, { side, executed }: PageSide): Node[] {
  return side.hand.bands.map(({ fromSeconds, untilSeconds }) => {
    const outer = valueAt(side, executed.plan.radius, fromSeconds) / MILLIMETRE;
    const inner = valueAt(side, executed.plan.radius, untilSeconds) / MILLIMETRE;
    return svg(document, 'circle', {
      class: 'band',
      r: Math.max(0, (outer + inner) / 2).toFixed(3),
      'stroke-width': Math.max(outer - inner, 0.5).toFixed(3),
    });
  });
}

/** Lead-in before the silent turns, lead-out from after them to the finishing groove. */
function leadGrooves(
  document: Document,
  { side, executed, settings }: PageSide,
  report: PlanReport,
): Node[] {
  const { radius } = executed.plan;
  const before = radius[0] ?? report.startDiameter / 2;
  const after = radius[side.lead + side.programCount + side.lead] ?? report.endDiameter / 2;
  const finishing = settings.finishingDiameter / 2;
  const outside = Math.min(
    before + LEAD_IN_TURNS * settings.leadInPitch,
    (settings.disc * INCH) / 2,
  );
  const spiral = (from: number, to: number, pitch: number) =>
    svg(document, 'path', {
      class: 'lead',
      d: linePath(spiralPoints(from / MILLIMETRE, to / MILLIMETRE, pitch / MILLIMETRE)),
    });
  return [
    spiral(outside, before, settings.leadInPitch),
    ...(after > finishing ? [spiral(after, finishing, settings.leadOutPitch)] : []),
  ];
}
