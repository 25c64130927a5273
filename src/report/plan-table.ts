import type { ForecastedFile } from '../forecast-result.js';
import type { Units } from './length-text.js';
import { plainTable } from './plain-table.js';
import { planFigures } from './plan-figures.js';

/** From so many columns on there is room for all figures. */
const WIDE = 100;

/**
 * The machine's automation, the plan and fixed pitch, a line each, what is judged marked; and the
 * least radius that any plan would take.
 */
export function planTable({ forecast }: ForecastedFile, units: Units, columns: number): string[] {
  const { executes, planner, tightest } = forecast;
  const figures = planFigures(units).filter(({ isWide }) => columns >= WIDE || !isWide);
  const plans = [
    { is: 'machine', name: 'machine', plan: forecast.machine },
    { is: 'plan', name: planner, plan: forecast.plan },
    { is: 'fixed', name: 'fixed', plan: forecast.fixed },
  ].map(({ is, name, plan }) => [
    `${name}${is === executes ? ' *' : ''}`,
    ...figures.map(({ cell }) => cell(plan)),
  ]);
  const floor = figures.map(({ radiusCell }) => radiusCell?.(tightest.radiusUsed) ?? '');
  const rows = [
    ['* is judged', ...figures.map(({ head }) => head)],
    ['', ...figures.map(({ unit }) => unit)],
    ...plans,
    ...(planner === 'tightest' ? [] : [['tightest', ...floor]]),
  ];
  const roomy = tableWithGaps(2, rows);
  return roomy.every((line) => line.length <= columns) ? roomy : tableWithGaps(1, rows);
}

function tableWithGaps(gap: number, rows: readonly (readonly string[])[]): string[] {
  const figures = (rows[0] ?? []).slice(1);
  return plainTable(
    [{ align: 'left', gap: 2 }, ...figures.map(() => ({ align: 'right', gap }) as const)],
    rows,
  );
}
