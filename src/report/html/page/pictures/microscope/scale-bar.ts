import { INCH, MICROMETRE, MIL, MILLIMETRE } from '../../../../../units.js';
import type { Units } from '../../../../length-text.js';
import { svg } from '../paint/svg.js';

/** A bar of a round length that takes about a share of what there is. */
export function roundLength(longest: number, units: Units): { length: number; name: string } {
  const unit = units === 'us' ? MIL : MICROMETRE;
  const most = longest / unit;
  const power = 10 ** Math.floor(Math.log10(most));
  const count = power * ([5, 2].find((factor) => factor * power <= most) ?? 1);
  return { length: count * unit, name: nameOf(count, units) };
}

function nameOf(count: number, units: Units): string {
  if (units === 'us') {
    return count >= 1000 ? `${(count * MIL) / INCH} in` : `${count} mil`;
  }
  return count >= 1000 ? `${(count * MICROMETRE) / MILLIMETRE} mm` : `${count} µm`;
}

export interface BarPlace {
  readonly x: number;
  readonly y: number;
  /** Pixels a metre in the direction the bar lies in. */
  readonly scale: number;
  readonly longest: number;
  readonly isUpright?: boolean;
}

/** A scale bar with its length, from its left or upper end. */
export function scaleBar(
  document: Document,
  { x, y, scale, longest, isUpright = false }: BarPlace,
  units: Units,
): Node {
  const { length, name } = roundLength(longest / scale, units);
  const pixels = length * scale;
  const [dx, dy] = isUpright ? [0, pixels] : [pixels, 0];
  const [tx, ty] = isUpright ? [3.5, 0] : [0, 3.5];
  const stroke = `M${x - tx} ${y - ty}l${2 * tx} ${2 * ty}M${x} ${y}l${dx} ${dy}M${x + dx - tx} ${y + dy - ty}l${2 * tx} ${2 * ty}`;
  const label = isUpright
    ? { x: x + 7, y: y + pixels / 2 + 4 }
    : { x: x + pixels / 2, y: y - 6, 'text-anchor': 'middle' };
  return svg(
    document,
    'g',
    { class: 'scale-bar' },
    svg(
      document,
      'rect',
      isUpright
        ? { class: 'plate', x: x - 7, y: y - 5, width: 20 + 6.5 * name.length, height: pixels + 10 }
        : {
            class: 'plate',
            x: x - 7,
            y: y - 19,
            width: Math.max(pixels, 7 * name.length) + 14,
            height: 25,
          },
    ),
    svg(document, 'path', { d: stroke }),
    svg(document, 'text', label, name),
  );
}
