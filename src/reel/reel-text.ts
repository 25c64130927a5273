import { cautionsOf } from '../report/cautions.js';
import { fixed, frequencyText, levelText, type Units } from '../report/length-text.js';
import { timeText } from '../report/place-text.js';
import { safeText } from '../report/safe-text.js';
import { safeCorner } from '../report/set-up.js';
import { wrapText } from '../report/wrap-text.js';
import { lookFor, lookName } from './look-words.js';
import type { Reel } from './reel.js';
import { MOVE_SECONDS } from './reel-layout.js';
import { passageText } from './reel-passage-text.js';
import { LOOKS } from './worst-second.js';

/** How to cut the passages of a reel, and what to find under the microscope, for paper. */
export function reelText(reel: Reel, units: Units): string {
  const { passages, file } = reel;
  const wrap = (text: string) => wrapText(text, '', '').split('\n');
  return [
    `Test cut: ${passages.length === 1 ? 'the hardest passage' : `the ${passages.length} hardest passages`} of ${safeText(file.name)}`,
    '',
    ...wrap(settingsText(reel)),
    ...wrap(silenceText(reel)),
    '',
    ...passages.flatMap((_, at) => [...passageText(reel, at, units), '']),
    ...lookTexts(reel).flatMap(wrap),
    ...wrap(readingText()),
    ...wrap(cautionsOf(file).join(' ')),
    'Cut by ___________________  date ______________  lacquer ___________________',
    '',
  ].join('\n');
}

/** What holds for all passages. */
function settingsText({ file, isFloat, bitDepth, sampleRate, isFiltered }: Reel): string {
  const { settings, forecast } = file;
  const corner = isFiltered ? null : safeCorner(settings.ellipticalHz, settings.ellipticalSteps);
  const elliptical = corner === null ? 'elliptical out' : `elliptical ${frequencyText(corner)}`;
  const filtered = isFiltered ? ' (the filters of the tracks are in the samples already)' : '';
  const speed = settings.speedFactor === 1 ? '' : ' at half speed';
  return (
    `Level ${levelText(forecast.levelDb)}, ${fixed(settings.rpm, 2)} rpm${speed}, ${elliptical}${filtered}. ` +
    'Automation of pitch and depth off: each passage has one pitch and one width, set by hand. ' +
    `Samples ${isFloat ? 'in' : 'of'} ${bitDepth} bit${isFloat ? ' float' : ''}, ${sampleRate} Hz, ` +
    'as the program has them: no fade, no gain. Each passage begins and ends where the program is ' +
    'nearest to zero.'
  );
}

function silenceText({ layout, sampleRate, file }: Reel): string {
  const { silentTurns, speedFactor } = file.settings;
  const silent = layout.silentFrames / sampleRate / speedFactor;
  const turns = silentTurns === 1 ? 'a turn' : `${silentTurns} turns`;
  return (
    `Before and after each passage ${turns} of silence (${fixed(silent, 2)} s), to be cut with it; ` +
    `between two passages ${MOVE_SECONDS} s more, to lift the cutter and move it.`
  );
}

/** What to look for, once for each kind that there is. */
function lookTexts({ passages }: Reel): string[] {
  const looks = passages.flatMap(({ hard }) => hard.map(({ look }) => look));
  return LOOKS.filter((look) => looks.includes(look)).map((look) => {
    const name = lookName(look);
    return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${lookFor(look)}`;
  });
}

function readingText(): string {
  return (
    'Land is told from – to: as far off as the profile lets the lathe be, and on a perfect lathe; ' +
    'it is a measure across the grooves at the surface. Less than 0 is an overcut. Widths are ' +
    'the least and the largest of that quarter turn. The pitch to set is what two turns have ' +
    'between them there on the side, whatever the lathe makes of it turn by turn. Reel times are those of the WAV beside this text, ' +
    `where cue points name the passages; ${timeText(0)} is its first sample.`
  );
}
