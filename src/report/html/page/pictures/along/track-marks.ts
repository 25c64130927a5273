import type { PageSide } from '../../page-side.js';
import { svg } from '../paint/svg.js';
import type { PlotFrame } from './panel-axis.js';
import type { Span } from './view-span.js';

/** What the line of names adds to the marks; 0 on a side of one file. */
export function trackRoom({ side }: PageSide): number {
  return side.hand.tracks.length === 0 ? 0 : 18;
}

const LETTER = 6.4;

/** The tracks by their names, as much of each as there is room for, and where they begin and end. */
export function trackMarks(
  document: Document,
  { side }: PageSide,
  view: Span,
  frame: PlotFrame,
): Node[] {
  const xOf = (at: number) =>
    frame.left + ((at - view.from) / (view.until - view.from)) * frame.plotWidth;
  return side.hand.tracks.flatMap(({ name, fromSeconds, untilSeconds }) => {
    const from = xOf(Math.max(fromSeconds, view.from));
    const until = xOf(Math.min(untilSeconds, view.until));
    if (until <= from) return [];
    return [
      svg(document, 'path', { class: 'track-line', d: `M${from} 3v12M${from} 14H${until - 1}` }),
      svg(
        document,
        'text',
        { class: 'track', x: from + 4, y: 11 },
        svg(document, 'title', {}, name),
        shortened(name, Math.floor((until - from - 6) / LETTER)),
      ),
    ];
  });
}

/** Cut between whole characters as they are seen, with an ellipsis where something is left out. */
function shortened(name: string, letters: number): string {
  const seen = [...new Intl.Segmenter().segment(name)].map(({ segment }) => segment);
  if (seen.length <= letters) return name;
  return letters < 3 ? '' : `${seen.slice(0, letters - 1).join('')}…`;
}

/** A hair in a panel at the start of each track. */
export function trackHairs(
  document: Document,
  { side }: PageSide,
  view: Span,
  frame: PlotFrame,
  height: number,
): Node[] {
  return side.hand.tracks.flatMap(({ fromSeconds }) => {
    if (fromSeconds < view.from || fromSeconds > view.until) return [];
    const x = frame.left + ((fromSeconds - view.from) / (view.until - view.from)) * frame.plotWidth;
    return [svg(document, 'line', { class: 'track-line', x1: x, x2: x, y1: 0, y2: height })];
  });
}
