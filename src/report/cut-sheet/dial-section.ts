import type { ForecastedFile } from '../../forecast-result.js';
import { type Markup, markup } from '../html/markup.js';
import { fixed, frequencyText, largeLengthText, levelText, type Units } from '../length-text.js';
import { safePitchText } from '../safe-pitch-text.js';
import { setUp } from '../set-up.js';
import { widthText } from '../width-text.js';

/** What to dial in, each with room for what was set. */
export function dialSection(file: ForecastedFile, units: Units): Markup {
  const cells = dials(file, units).map(
    ([name, value]) =>
      markup`<div class="dial"><dt>${name}</dt><dd>${value}</dd><dd class="blank"></dd></div>`,
  );
  return markup`<section class="dials"><h2>To dial in</h2><dl>${cells}</dl>${levelNote(file)}</section>`;
}

function dials(file: ForecastedFile, units: Units): (readonly [name: string, value: string])[] {
  const { settings, forecast } = file;
  const set = setUp(file);
  const holds = forecast.headroom.recommendedDb !== null;
  const meter = set.meterReading === null ? '–' : String(Number(fixed(set.meterReading, 2)));
  return [
    ['level', holds ? levelText(set.levelDb, digits(settings.levelStep)) : 'none holds'],
    ['base pitch', safePitchText(set.basePitch, settings.pitchStep, units)],
    ['groove width', widthText(set.width, units)],
    ['depth meter', meter],
    ['elliptical', set.ellipticalHz === null ? 'out' : frequencyText(set.ellipticalHz)],
    ['speed', `${Number(fixed(settings.rpm, 2))} rpm${settings.speedFactor === 1 ? '' : ', half'}`],
    ['start diameter', largeLengthText(settings.startDiameter, units)],
    ['lead-in pitch', largeLengthText(settings.leadInPitch, units)],
    ['lead-out pitch', largeLengthText(settings.leadOutPitch, units)],
    ['finishing groove', largeLengthText(settings.finishingDiameter, units)],
  ];
}

/** Digits beyond the first that a step of the level needs. */
function digits(step: number): 0 | 1 {
  return Math.abs(step * 10 - Math.round(step * 10)) > 1e-6 ? 1 : 0;
}

/** Diameters and predictions are of the level that was asked for, whatever is dialled in. */
function levelNote(file: ForecastedFile): Markup | null {
  const { forecast } = file;
  const isOther = setUp(file).levelDb !== forecast.levelDb;
  if (forecast.headroom.recommendedDb !== null && !isOther) return null;
  return markup`<p class="note">Diameters and predictions on this sheet are for ${levelText(forecast.levelDb, 1)}, which is not what to dial in: make the sheet again at the level that is cut.</p>`;
}
