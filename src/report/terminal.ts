import type { ChalkInstance } from 'chalk';
import type { ForecastedFile } from '../forecast-result.js';
import type { Severity, Verdict } from '../model/forecast-types.js';
import { findingText } from './finding-text.js';
import { headLoadText } from './head-load-text.js';
import { headroomText } from './headroom-text.js';
import { hotSpotText } from './hot-spot-text.js';
import { fixed, levelText, type Units } from './length-text.js';
import { amplitudeDb, powerDb, roundDb } from './numbers.js';
import { timeText } from './place-text.js';
import { planTable } from './plan-table.js';
import { safeText } from './safe-text.js';
import { assumptionText, executesText, setUpText } from './set-up-text.js';
import { wrapText } from './wrap-text.js';

export interface TerminalOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
}

/** Findings of one side that are shown; the JSON has all of them. */
const MOST_FINDINGS = 40;

/** One side for the engineer at the lathe: what to dial in first, then why. */
export function sideText(file: ForecastedFile, options: TerminalOptions): string {
  const { units, paint } = options;
  const name = paint.bold(safeText(file.name));
  return [
    wrapText(`${name}${assumptionText(file)}: ${setUpText(file, units)}`, '', '  '),
    '',
    verdictText(file, paint),
    wrapText(programText(file), '  ', '    '),
    '',
    planTable(file, units),
    '',
    ...headroomLines(file, units),
    wrapText(headLoadText(file.forecast.headLoad), '  ', '    '),
    ...hotSpotLines(file, units),
    ...findingLines(file, options),
    '',
  ].join('\n');
}

/** What the verdict is, of how much, and for which plan it holds. */
function verdictText({ forecast, settings }: ForecastedFile, paint: ChalkInstance): string {
  const { verdict, findings, levelDb } = forecast;
  const label = paintOf(verdict, paint)(verdict.toUpperCase());
  const counts = SEVERITIES.flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  const found = counts.length === 0 ? 'nothing found' : counts.join(', ');
  const holds = `for ${executesText(forecast)} at level ${levelText(levelDb)}`;
  const disc = `${settings.disc}-inch ${settings.medium}`;
  const unset = settings.executesIsSet ? '' : ' No profile says what the lathe executes.';
  return wrapText(`${label} ${holds} on ${disc}: ${found}.${unset}`, '  ', '    ');
}

function programText({ forecast, program, settings }: ForecastedFile): string {
  const { durationSeconds, turns } = forecast;
  const { rpm, speedFactor } = settings;
  const [left, right] = program.meanSquare;
  const speed = `${fixed(rpm, 2)} rpm`;
  const lathe =
    speedFactor === 1 ? '' : `, on the lathe ${timeText(durationSeconds / speedFactor)}`;
  const short = turns < 1 ? ' Shorter than one turn: nothing but silence lies beside it.' : '';
  const measures = [
    measureText('loudness', roundDb(program.loudnessLufs), 'LUFS'),
    measureText('true peak', amplitudeDb(Math.max(...program.truePeak)), 'dBTP'),
    measureText('average', powerDb((left + right) / 2), 'dBFS rms'),
  ].filter((text) => text !== '');
  const measured = measures.length === 0 ? '' : ` ${sentence(measures.join(', '))}`;
  return `${timeText(durationSeconds)}${lathe}, ${fixed(turns, 1)} turns at ${speed}.${short}${measured}`;
}

/** Empty for what silence does not have. */
function measureText(name: string, value: number | null, unit: string): string {
  return value === null ? '' : `${name} ${fixed(value, 1)} ${unit}`;
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function headroomLines(file: ForecastedFile, units: Units): string[] {
  const text = headroomText(file, units);
  return text === '' ? [] : [wrapText(text, '  ', '    ')];
}

function hotSpotLines(file: ForecastedFile, units: Units): string[] {
  const { hotSpots } = file.forecast;
  if (hotSpots.length === 0) return [];
  const lines = hotSpots.map((spot) =>
    wrapText(hotSpotText(spot, file.settings, units), '    ', '      '),
  );
  return ['', '  Where land is least:', ...lines];
}

function findingLines(file: ForecastedFile, { units, paint }: TerminalOptions): string[] {
  const findings = file.forecast.findings.toSorted(
    (one, other) => (one.atSeconds ?? -Infinity) - (other.atSeconds ?? -Infinity),
  );
  if (findings.length === 0) return [];
  const lines = findings.slice(0, MOST_FINDINGS).map((finding) => {
    const { message, remedy } = findingText(finding, { settings: file.settings, units });
    const label = paintOf(finding.severity, paint)(finding.severity);
    return wrapText(`${label}: ${message} ${remedy}`, '    ', '      ');
  });
  const rest = findings.length - lines.length;
  if (rest > 0) lines.push(`    and ${rest} more; --json has them all`);
  return ['', '  Findings, in time order:', ...lines];
}

const SEVERITIES = ['fault', 'caution', 'note'] as const satisfies readonly Severity[];

function paintOf(of: Severity | Verdict, paint: ChalkInstance): ChalkInstance {
  switch (of) {
    case 'fault':
      return paint.bold.red;
    case 'caution':
      return paint.bold.yellow;
    case 'clear':
      return paint.bold.green;
    case 'note':
      return paint.bold;
  }
}
