import { svg } from './svg.js';

const LINE = 15;
const LETTER = 6.9;
const PADDING = 7;
/** From the place itself, CSS pixels. */
const AWAY = 14;

/**
 * A note beside a place, on paper of its own: to the right and below, or where there is no room to
 * the left and above.
 * @param within width and height that there are
 */
export function notedPlace(
  document: Document,
  at: { readonly x: number; readonly y: number },
  within: { readonly width: number; readonly height: number },
  lines: readonly string[],
): SVGGElement {
  const width = 2 * PADDING + LETTER * Math.max(...lines.map(({ length }) => length));
  const height = 2 * PADDING + LINE * lines.length - 3;
  const right = at.x + AWAY;
  const below = at.y + AWAY;
  const x = right + width > within.width ? at.x - AWAY - width : right;
  const y = below + height > within.height ? at.y - AWAY - height : below;
  return svg(
    document,
    'g',
    { class: 'note readout' },
    svg(document, 'rect', { x: Math.max(0, x), y, width, height, rx: 2 }),
    ...lines.map((line, at) =>
      svg(document, 'text', { x: Math.max(0, x) + PADDING, y: y + PADDING + 9 + LINE * at }, line),
    ),
  );
}
