import type { ForecastedFile } from '../forecast-result.js';
import { levelOption } from './common-level-digits.js';
import { shortenNames } from './folder-shorten.js';
import { fixed, levelText, type Units } from './length-text.js';
import { levelHolds } from './level-holds.js';
import { executesText } from './set-up-text.js';
import { wrapText } from './wrap-text.js';

/** Columns that the name may take. */
const NAME = 44;

/** What the scale is of, when it does not hold, and how it is read. */
export function scaleHead(file: ForecastedFile, units: Units, ascii: boolean): string[] {
  const { forecast, settings } = file;
  const [name = ''] = shortenNames([file.name], NAME, ascii ? '~' : '…');
  const texts = [
    `For ${executesText(forecast)} at level ${levelText(forecast.levelDb)}, ${fixed(settings.rpm, 2)} rpm, ` +
      `${settings.disc}-inch ${settings.medium}.${levelNote(file)}`,
    `If the lathe stands further in than told, it takes more pitch than it is forecast to.${clockNote(file)}${ruleNote(units)}`,
  ];
  return [
    `${name}: diameters to read off the lathe`,
    ...texts.flatMap((text) => wrapText(text, '  ', '  ').split('\n')),
  ];
}

/** A lathe that follows the program takes another spiral at another level. */
function levelNote({ forecast }: ForecastedFile): string {
  const { executes, headroom } = forecast;
  const { recommendedDb } = headroom;
  if (executes === 'fixed' || levelHolds(forecast)) return '';
  if (recommendedDb === null) return ' No level from -12 to +12 dB holds.';
  return ` That level does not hold; make the scale at one that does: ${levelOption(recommendedDb)}.`;
}

function clockNote({ settings }: ForecastedFile): string {
  if (settings.speedFactor === 1) return '';
  return " Lathe and program run at half speed: waits are by the lathe's clock.";
}

function ruleNote(units: Units): string {
  return units === 'us' ? ' Fractions: nearest 1/64 in of a rule.' : '';
}
