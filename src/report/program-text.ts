import type { ForecastedFile } from '../forecast-result.js';
import { diameterText, fixed, largeLengthText, type Units } from './length-text.js';
import { amplitudeDb, powerDb, roundDb } from './numbers.js';
import { timeText } from './place-text.js';

/** How long the program is, where what is cut of it ends, and what is spare there. */
export function programLengthText({ forecast, settings }: ForecastedFile, units: Units): string {
  const { durationSeconds, turns, executes } = forecast;
  const { rpm, speedFactor, innerDiameter, preferredEndDiameter } = settings;
  const lathe =
    speedFactor === 1 ? '' : `, on the lathe ${timeText(durationSeconds / speedFactor)}`;
  const disc = `${settings.disc}-inch ${settings.medium}`;
  const speed = `${fixed(turns, 1)} turns at ${Number(fixed(rpm, 2))} rpm`;
  const short = turns < 1 ? ' Shorter than one turn: nothing but silence lies beside it.' : '';
  const { endDiameter } = forecast[executes];
  const spare = (diameter: number) => largeLengthText((endDiameter - diameter) / 2, units);
  const preferred =
    preferredEndDiameter === null
      ? ''
      : `, ${spare(preferredEndDiameter)} to the preferred ` +
        largeLengthText(preferredEndDiameter, units);
  const ends = `Ends ${endDiameter > 0 ? 'at ' : ''}${diameterText(endDiameter, units)}`;
  const limit = `spare radius ${spare(innerDiameter)} to the limit of ${largeLengthText(innerDiameter, units)}`;
  return `${timeText(durationSeconds)}${lathe}, ${speed}, ${disc}. ${ends}; ${limit}${preferred}.${short}`;
}

/** Loudness, peak and average level of the file; empty for silence, which has none. */
export function levelsText({ program }: ForecastedFile): string {
  const [left, right] = program.meanSquare;
  const measures = [
    measureText('loudness', roundDb(program.loudnessLufs), 'LUFS'),
    measureText('true peak', amplitudeDb(Math.max(...program.truePeak)), 'dBTP'),
    measureText('average', powerDb((left + right) / 2), 'dBFS rms'),
  ].filter((text) => text !== '');
  if (measures.length === 0) return '';
  const text = measures.join(', ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** Empty for what silence does not have. */
function measureText(name: string, value: number | null, unit: string): string {
  return value === null ? '' : `${name} ${fixed(value, 1)} ${unit}`;
}
