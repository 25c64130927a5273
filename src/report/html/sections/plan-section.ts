import type { ForecastedFile } from '../../../forecast-result.js';
import { largeLengthText, type Units } from '../../length-text.js';
import { planFigures } from '../../plan-figures.js';
import { type Markup, markup } from '../markup.js';
import { scroller } from './scroller.js';

/** Machine, plan and fixed pitch beside each other, figure by figure; what is judged is marked. */
export function planSection({ forecast }: ForecastedFile, units: Units): Markup {
  const { executes, planner, tightest } = forecast;
  const plans = [
    { is: 'machine', name: 'the machine', plan: forecast.machine },
    { is: 'plan', name: `plan (${planner})`, plan: forecast.plan },
    { is: 'fixed', name: 'fixed pitch', plan: forecast.fixed },
  ];
  const heads = plans.map(
    ({ is, name }) =>
      markup`<th scope="col" class="${is}">${name}${is === executes && markup` <b title="what the verdict is about">∗</b>`}</th>`,
  );
  const rows = planFigures(units).map(
    ({ head, unit, cell }) =>
      markup`<tr><th scope="row">${`${head} ${unit}`.trim()}</th>${plans.map(({ plan }) => markup`<td>${cell(plan)}</td>`)}</tr>`,
  );
  const least = markup` The least radius that any plan takes is ${largeLengthText(tightest.radiusUsed, units)}.`;
  const table = markup`<table class="figures"><caption>∗ is judged.${least}</caption>
<thead><tr><td></td>${heads}</tr></thead><tbody>${rows}</tbody></table>`;
  return markup`<section class="plans" aria-labelledby="plans"><h2 id="plans">The plans</h2>${scroller('The plans', table)}</section>`;
}
