import type { SideFit } from '../../../fit/fit-result.js';
import { isWholeDecibel, judgementCells } from '../../fit-level-table.js';
import { levelText, type Units } from '../../length-text.js';
import { type Markup, markup } from '../markup.js';
import { scroller } from './scroller.js';

/** The level by whole decibels against where each planner ends, the room left and its faults. */
export function levelTable(fit: SideFit, units: Units): Markup {
  const { levels, planners, executed } = fit;
  // Three planners side by side leave no room for where each ends.
  const withEnds = planners.length <= 2;
  const columns = withEnds ? ['ends at', 'spare', 'faults'] : ['spare', 'faults'];
  const names = planners.map(
    (planner) =>
      markup`<th scope="colgroup" colspan="${columns.length}">${planner}${planner === executed && ' ∗'}</th>`,
  );
  const heads = planners.map(() => columns.map((name) => markup`<th scope="col">${name}</th>`));
  const rows = levels.filter(isWholeDecibel).map(({ levelDb, judgements }) => {
    const cells = judgements
      .flatMap((judgement) => judgementCells(judgement, units, withEnds))
      .map((cell) => markup`<td>${cell}</td>`);
    const isPlanned = Math.abs(levelDb - fit.levelDb) < 1e-9;
    return markup`<tr${isPlanned && markup` class="planned"`}><th scope="row">${levelText(levelDb)}</th>${cells}</tr>`;
  });
  const groups = planners.map(() => markup`<colgroup span="${columns.length}">`);
  const table = markup`<table class="figures levels"><caption>∗ is judged.</caption>
<colgroup>${groups}<thead><tr><th scope="col" rowspan="2">level</th>${names}</tr><tr>${heads}</tr></thead>
<tbody>${rows}</tbody></table>`;
  return scroller('Level against room', table);
}
