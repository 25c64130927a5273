import Table from 'cli-table3';
import type { ForecastedFile } from '../forecast-result.js';
import type { PlanReport } from '../model/forecast-types.js';
import {
  diameterText,
  fixed,
  largeLengthText,
  lengthText,
  lpiText,
  pitchText,
  type Units,
} from './length-text.js';
import { timeText } from './place-text.js';

/** The machine's automation, the plan and fixed pitch side by side; what is cut is marked. */
export function planTable({ forecast }: ForecastedFile, units: Units): string {
  const { machine, plan, fixed: fixedPlan, planner, executes } = forecast;
  const heads = [
    ['machine', 'the machine'],
    ['plan', `plan (${planner})`],
    ['fixed', 'fixed pitch'],
  ].map(([name, text]) => (name === executes ? `${text} *` : text));
  const plans = [machine, plan, fixedPlan];
  const table = new Table({
    chars: NO_LINES,
    colAligns: ['left', 'right', 'right', 'right'],
    style: { head: [], border: [], 'padding-left': 2, 'padding-right': 0 },
  });
  table.push(['', ...heads]);
  for (const [label, cell] of rowsIn(units))
    table.push([label, ...plans.map((each) => cell(each, units))]);
  return `${table.toString().replace(/ +$/gm, '')}\n${' '.repeat(2)}* what the verdict is about`;
}

type Row = readonly [label: string, cell: (plan: PlanReport, units: Units) => string];

const LINES = 'mean lines per inch';

const ROWS: readonly Row[] = [
  ['ends at diameter', (plan, units) => diameterText(plan.endDiameter, units)],
  ['spare radius', (plan, units) => largeLengthText(plan.spare, units)],
  ['radius used', (plan, units) => largeLengthText(plan.radiusUsed, units)],
  ['mean pitch', ({ pitchMean }, units) => pitchText(pitchMean, units)],
  [LINES, ({ pitchMean }) => lpiText(pitchMean)],
  ['widest pitch', ({ pitchMax }, units) => pitchText(pitchMax, units)],
  ['least land', ({ landMin }, units) => lengthText(landMin, units)],
  ['  at', ({ landMinAtSeconds }) => timeText(landMinAtSeconds)],
  ['least width', ({ widthMin }, units) => lengthText(widthMin, units)],
  ['deepest cut', ({ cutDepthMax }, units) => lengthText(cutDepthMax, units)],
  ['steepest (1 = facets rub)', ({ facetMax }) => fixed(facetMax, 2)],
];

/** Where pitch is told in lines per inch, one row of them is enough. */
function rowsIn(units: Units): readonly Row[] {
  return units === 'us' ? ROWS.filter(([label]) => label !== LINES) : ROWS;
}

const NO_LINES = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '',
};
