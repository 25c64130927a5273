import type { SideForecast } from '../../../../model/forecast-types.js';
import type { Units } from '../../../length-text.js';
import {
  diameterText,
  largeLengthText,
  lengthText,
  lpiText,
  pitchText,
} from '../../../length-text.js';
import type { Recomputed } from '../recompute.js';
import { element } from './element.js';

type Told = (plan: SideForecast['plan'], units: Units) => string;

const ROWS: readonly (readonly [name: string, label: string, told: Told])[] = [
  ['end', 'ends at', ({ endDiameter }, units) => diameterText(endDiameter, units)],
  ['spare', 'spare', ({ spare }, units) => largeLengthText(spare, units)],
  ['land', 'least land', ({ landMin }, units) => lengthText(landMin, units)],
  [
    'pitch',
    'mean pitch',
    ({ pitchMean }, units) =>
      units === 'us' ? lpiText(pitchMean) : `${pitchText(pitchMean, units)}, ${lpiText(pitchMean)}`,
  ],
];

/** Verdict, and where machine and plan end: what a hand on a slider looks at. */
export function keyFigures(): { element: HTMLElement; show(now: Recomputed): void } {
  const verdict = element('p', { class: 'verdict-now' });
  const cells = ROWS.map(([name, label, told]) => {
    const machine = element('td', { 'data-figure': `${name}-machine` });
    const plan = element('td', { 'data-figure': `${name}-plan` });
    const row = element('tr', {}, element('th', { scope: 'row' }, label), machine, plan);
    return { machine, plan, row, told };
  });
  const head = element(
    'tr',
    {},
    element('td'),
    element('th', { scope: 'col', class: 'machine' }, 'machine'),
    element('th', { scope: 'col', class: 'plan' }, 'plan'),
  );
  const table = element(
    'table',
    { class: 'key-figures' },
    element('thead', {}, head),
    element('tbody', {}, ...cells.map(({ row }) => row)),
  );
  return {
    element: element('div', {}, verdict, table),
    show: ({ side: { forecast, units } }) => {
      verdict.textContent = forecast.verdict.toUpperCase();
      verdict.className = `verdict-now ${forecast.verdict}`;
      for (const { machine, plan, told } of cells) {
        machine.textContent = told(forecast.machine, units);
        plan.textContent = told(forecast.plan, units);
      }
    },
  };
}
