import type { ChalkInstance } from 'chalk';
import type { ForecastedFile } from '../forecast-result.js';
import type { Severity } from '../model/forecast-types.js';
import { levelText } from './length-text.js';
import { executesText } from './set-up-text.js';
import { severityPaint } from './severity-paint.js';

const SEVERITIES = ['fault', 'caution', 'note'] as const satisfies readonly Severity[];

/** What the verdict is, of how much, and for which plan it holds; what is accepted is apart. */
export function verdictText({ forecast }: ForecastedFile, paint: ChalkInstance): string {
  const { verdict, findings, levelDb } = forecast;
  const label = severityPaint(verdict, paint)(verdict.toUpperCase());
  const open = findings.filter(({ accepted }) => accepted === undefined);
  const counts = SEVERITIES.flatMap((severity) => {
    const count = open.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  const found = counts.length === 0 ? 'nothing found' : counts.join(', ');
  const known = findings.length - open.length;
  const accepted = known === 0 ? '' : `; ${known} accepted`;
  const holds = `for ${executesText(forecast)} at the planned ${levelText(levelDb)}`;
  return `${label} ${holds}: ${found}${accepted}.`;
}
