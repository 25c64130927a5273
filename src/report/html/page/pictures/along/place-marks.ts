import type { Finding, Severity } from '../../../../../model/forecast-types.js';
import { findingText } from '../../../../finding-text.js';
import { lengthText } from '../../../../length-text.js';
import type { PageSide } from '../../page-side.js';
import { svg } from '../paint/svg.js';
import type { PlotFrame } from './panel-axis.js';
import { trackRoom } from './track-marks.js';
import type { Span } from './view-span.js';

/** Findings nearer to one another than this share a mark, CSS pixels. */
const TOGETHER = 9;
const RANK: Readonly<Record<Severity, number>> = { note: 0, caution: 1, fault: 2 };
/** The more harm, the more ink: a filled triangle, an open one, a dot; told apart in grey too. */
const GLYPHS: Readonly<Record<Severity, string>> = {
  fault: 'M-5.5 4.5L0 -5.5L5.5 4.5Z',
  caution: 'M-5 4L0 -5L5 4Z',
  note: 'M-2 0A2 2 0 1 0 2 0A2 2 0 1 0 -2 0Z',
};
export const MARKS_HEIGHT = 46;
/** From one number to the next. */
const BADGE = 18;
const FINDINGS_Y = 12;
const HOT_SPOTS_Y = 33;

interface Cluster {
  readonly x: number;
  readonly findings: Finding[];
}

/** Findings as marks, and under them the hot spots by their numbers; a click goes to the place. */
export function placeMarks(
  document: Document,
  page: PageSide,
  view: Span,
  frame: PlotFrame,
  go: (atSeconds: number) => void,
): Node[] {
  const xOf = (at: number) =>
    frame.left + ((at - view.from) / (view.until - view.from)) * frame.plotWidth;
  const isShown = (at: number) => at >= view.from && at <= view.until;
  const down = trackRoom(page);
  const spots = page.forecast.hotSpots
    .flatMap(({ atSeconds, land }, rank) => (isShown(atSeconds) ? [{ atSeconds, land, rank }] : []))
    .sort((one, other) => one.atSeconds - other.atSeconds);
  const places = spread(
    spots.map(({ atSeconds }) => xOf(atSeconds)),
    frame,
  );
  return [
    ...clustersOf(page.forecast.findings, xOf, isShown).map((cluster) =>
      findingMark(document, page, cluster, down + FINDINGS_Y, go),
    ),
    ...spots.flatMap(({ atSeconds, land, rank }, which) => {
      const [x, y] = [places[which] ?? xOf(atSeconds), down + HOT_SPOTS_Y];
      const title = `Hot spot ${rank + 1}: land ${lengthText(land, page.units)}`;
      const mark = svg(
        document,
        'g',
        { class: 'badge mark', transform: `translate(${x.toFixed(1)} ${y})` },
        svg(document, 'title', {}, title),
        svg(document, 'line', { x1: 0, y1: 0, x2: (xOf(atSeconds) - x).toFixed(1), y2: 11 }),
        svg(document, 'circle', { class: 'disc', r: 8 }),
        svg(document, 'text', { y: 4, 'text-anchor': 'middle' }, String(rank + 1)),
      );
      return [clickable(mark, () => go(atSeconds))];
    }),
  ];
}

/** The same places in order, none nearer to the next than a badge is wide, within the plot. */
function spread(places: readonly number[], { left, plotWidth }: PlotFrame): number[] {
  const apart: number[] = [];
  for (const place of places) apart.push(Math.max(place, (apart.at(-1) ?? -Infinity) + BADGE));
  const right = left + plotWidth;
  return apart.map((place, at) => Math.min(place, right - BADGE * (apart.length - 1 - at)));
}

function clustersOf(
  findings: readonly Finding[],
  xOf: (at: number) => number,
  isShown: (at: number) => boolean,
): Cluster[] {
  const clusters: Cluster[] = [];
  const placed = findings
    .flatMap((finding) => (finding.atSeconds === null ? [] : [{ finding, at: finding.atSeconds }]))
    .filter(({ at }) => isShown(at))
    .sort((one, other) => one.at - other.at);
  for (const { finding, at } of placed) {
    const x = xOf(at);
    const last = clusters.at(-1);
    if (last !== undefined && x - last.x < TOGETHER) last.findings.push(finding);
    else clusters.push({ x, findings: [finding] });
  }
  return clusters;
}

function findingMark(
  document: Document,
  { settings, units }: PageSide,
  { x, findings }: Cluster,
  y: number,
  go: (atSeconds: number) => void,
): Node {
  const [worst] = findings.toSorted((one, other) => RANK[other.severity] - RANK[one.severity]);
  if (worst === undefined) return document.createTextNode('');
  const texts = findings.map((finding) => findingText(finding, { settings, units }).message);
  const title = texts.length > 4 ? [...texts.slice(0, 3), `and ${texts.length - 3} more`] : texts;
  const mark = svg(
    document,
    'g',
    { class: `mark ${worst.severity}`, transform: `translate(${x.toFixed(1)} ${y})` },
    svg(document, 'title', {}, title.join('\n')),
    // What the pointer has to hit is larger than what is seen.
    svg(document, 'rect', { class: 'target', x: -8, y: -11, width: 16, height: 22 }),
    svg(document, 'path', { d: GLYPHS[worst.severity] }),
  );
  return clickable(mark, () => go(worst.atSeconds ?? 0));
}

/** A press on a mark begins no selection. */
function clickable(mark: SVGGElement, go: () => void): SVGGElement {
  mark.addEventListener('pointerdown', (event) => event.stopPropagation());
  mark.addEventListener('click', (event) => {
    event.stopPropagation();
    go();
  });
  return mark;
}
