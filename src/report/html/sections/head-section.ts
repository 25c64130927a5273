import type { ForecastedFile } from '../../../forecast-result.js';
import type { Severity } from '../../../model/forecast-types.js';
import { headLoadText } from '../../head-load-text.js';
import { headroomText } from '../../headroom-text.js';
import { levelText, type Units } from '../../length-text.js';
import { levelsText, programLengthText } from '../../program-text.js';
import { assumptionText, executesText, setUpText } from '../../set-up-text.js';
import { type Markup, markup } from '../markup.js';

const SEVERITIES = ['fault', 'caution', 'note'] as const satisfies readonly Severity[];

/** What to dial in, the verdict, and the program in figures. */
export function headSection(file: ForecastedFile, units: Units): Markup {
  const set = setUpText(file, units);
  const isSilent = file.forecast.findings.some(({ id }) => id === 'silent');
  return markup`<p class="set-up">${set.charAt(0).toUpperCase()}${set.slice(1)}${assumption(file)}</p>
<p class="verdict ${file.forecast.verdict}">${verdict(file)}</p>
<p>${programLengthText(file, units)}</p>
<p>${[levelsText(file), headroomText(file)].filter((text) => text !== '').join(' ')}</p>
${!isSilent && markup`<p>${headLoadText(file.forecast.headLoad)}</p>`}`;
}

function assumption(file: ForecastedFile): string {
  const text = assumptionText(file).trim();
  return text === '' ? '' : ` ${text.charAt(1).toUpperCase()}${text.slice(2, -1)}.`;
}

/** The word that decides, and what it holds for; those that the house accepts are apart. */
function verdict({ forecast }: ForecastedFile): Markup {
  const open = forecast.findings.filter(({ accepted }) => accepted === undefined);
  const counts = SEVERITIES.flatMap((severity) => {
    const count = open.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  const known = forecast.findings.length - open.length;
  const found = counts.length === 0 ? 'nothing found' : counts.join(', ');
  const accepted = known === 0 ? '' : `; ${known} accepted`;
  const holds = `for ${executesText(forecast)} at ${levelText(forecast.levelDb)}`;
  return markup`<strong>${forecast.verdict.toUpperCase()}</strong> ${holds}: ${found}${accepted}.`;
}
