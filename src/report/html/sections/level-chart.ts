import type { SideFit } from '../../../fit/fit-result.js';
import type { LevelRow } from '../../../model/fit-levels.js';
import type { Planner } from '../../../settings.js';
import { INCH, MILLIMETRE } from '../../../units.js';
import { fixed, levelText, type Units } from '../../length-text.js';
import { type Markup, markup } from '../markup.js';
import { roundTicks } from '../page/pictures/paint/ticks.js';

/** Units of the drawing; its text is as large as the page's where it is about so wide. */
const WIDTH = 560;
const HEIGHT = 260;
const FRAME = { left: 46, right: 96, top: 14, bottom: 34 };
/** Names of lines stand at least so far apart. */
const NAME_HEIGHT = 14;

interface Line {
  readonly name: string;
  readonly ink: 'machine' | 'plan' | 'fixed';
  readonly isJudged: boolean;
  readonly points: readonly { readonly x: number; readonly y: number; readonly isClear: boolean }[];
}

interface Scale {
  readonly x: (levelDb: number) => number;
  readonly y: (spare: number) => number;
}

/**
 * The level against the room that is left, a line a planner; a filled point has no fault. All that
 * it shows stands in the table beside it too.
 */
export function levelChart(fit: SideFit, units: Units): Markup {
  const { levels, levelDb } = fit;
  const unit = units === 'us' ? { length: INCH, name: 'in' } : { length: MILLIMETRE, name: 'mm' };
  const spares = levels.flatMap(({ judgements }) => judgements.map(({ spare }) => spare));
  const [least, most] = [Math.min(0, ...spares), Math.max(0, ...spares)];
  const [from, to] = [levels[0]?.levelDb ?? -1, levels.at(-1)?.levelDb ?? 1];
  const scale: Scale = {
    x: (at) =>
      FRAME.left + ((at - from) / Math.max(1e-9, to - from)) * (WIDTH - FRAME.left - FRAME.right),
    y: (spare) =>
      FRAME.top +
      ((most - spare) / Math.max(1e-9, most - least)) * (HEIGHT - FRAME.top - FRAME.bottom),
  };
  const lines = linesOf(fit, scale);
  const rows = roundTicks(least / unit.length, most / unit.length, 5).map(
    (
      tick,
    ) => markup`<line class="hair" x1="${FRAME.left}" x2="${WIDTH - FRAME.right}" y1="${at(scale.y(tick * unit.length))}" y2="${at(scale.y(tick * unit.length))}"/>
<text class="end" x="${FRAME.left - 6}" y="${at(scale.y(tick * unit.length) + 4)}">${String(tick)}</text>`,
  );
  const columns = roundTicks(from, to, 7).map(
    (tick) =>
      markup`<text class="middle" x="${at(scale.x(tick))}" y="${HEIGHT - FRAME.bottom + 16}">${tick > 0 ? '+' : ''}${fixed(tick, 0)}</text>`,
  );
  const isInside = levelDb >= from && levelDb <= to;
  const planned = markup`<line class="planned" x1="${at(scale.x(levelDb))}" x2="${at(scale.x(levelDb))}" y1="${FRAME.top}" y2="${HEIGHT - FRAME.bottom}"/>`;
  return markup`<figure class="level-chart"><svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="Level against spare radius; the figures are in the table">
${rows}${columns}
<text x="4" y="10">${unit.name}</text>
<text class="end" x="${WIDTH - FRAME.right}" y="${HEIGHT - 4}">level, dB</text>
<line class="limit" x1="${FRAME.left}" x2="${WIDTH - FRAME.right}" y1="${at(scale.y(0))}" y2="${at(scale.y(0))}"/>
${isInside && planned}
${lines.map(drawn)}${names(lines)}
</svg><figcaption>Room that is left at each level; under 0 the side does not fit. Filled points have no fault, open ones have; upright is the planned ${levelText(levelDb)}.</figcaption></figure>`;
}

function linesOf({ levels, planners, executed }: SideFit, scale: Scale): Line[] {
  return planners.map((planner, at) => ({
    name: planner,
    ink: inkOf(planner),
    isJudged: planner === executed,
    points: levels.flatMap((row) => pointOf(row, at, scale)),
  }));
}

function pointOf({ levelDb, judgements }: LevelRow, planner: number, { x, y }: Scale) {
  const judgement = judgements[planner];
  if (judgement === undefined) return [];
  const { spare, faults } = judgement;
  return [{ x: x(levelDb), y: y(spare), isClear: faults.length === 0 }];
}

function inkOf(planner: Planner): Line['ink'] {
  return planner === 'machine' || planner === 'fixed' ? planner : 'plan';
}

function drawn({ ink, isJudged, points }: Line): Markup {
  const path = points.map(({ x, y }) => `${at(x)},${at(y)}`).join(' ');
  const dots = points.map(
    ({ x, y, isClear }) =>
      markup`<circle class="${isClear ? 'clear' : 'faulty'}" cx="${at(x)}" cy="${at(y)}" r="3"/>`,
  );
  return markup`<g class="${ink}${isJudged ? '' : ' other'}"><polyline points="${path}"/>${dots}</g>`;
}

/** Each line's name at its end, moved down where two would lie on one another. */
function names(lines: readonly Line[]): Markup[] {
  const ends = lines.flatMap((line) => {
    const last = line.points.at(-1);
    return last === undefined ? [] : [{ line, x: last.x, y: last.y }];
  });
  let free = Number.NEGATIVE_INFINITY;
  return ends
    .toSorted((one, other) => one.y - other.y)
    .map(({ line: { name, ink, isJudged }, x, y }) => {
      const line = Math.max(y + 4, free);
      free = line + NAME_HEIGHT;
      return markup`<text class="name ${ink}" x="${at(x + 8)}" y="${at(line)}">${name}${isJudged ? ' ∗' : ''}</text>`;
    });
}

function at(pixels: number): string {
  return fixed(pixels, 1);
}
