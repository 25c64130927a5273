import type { CueMark } from '../report/cue-copy/cue-mark.js';
import { largeLengthText, lengthText, type Units } from '../report/length-text.js';
import { timeText } from '../report/place-text.js';
import { lookName } from './look-words.js';
import type { Reel } from './reel.js';

/** A mark for each passage, as long as it is, in frames of the reel. */
export function reelMarks({ passages, file }: Reel, units: Units): CueMark[] {
  return passages.map(({ place, cut, hard }, at) => {
    const [hardest] = hard;
    const what = hardest === undefined ? '' : lookName(hardest.look);
    const when = timeText(place.firstFrame === 0 ? 0 : place.passage.fromSeconds);
    const land = hardest === undefined ? '' : `, land ${lengthText(hardest.predicted.land, units)}`;
    return {
      frame: place.atFrame,
      length: place.endFrame - place.firstFrame,
      label: `${at + 1} ${what}, ${when}`,
      note: `From ${when} of ${file.name}: cut at diameter ${largeLengthText(cut.startDiameter, units)}${land}`,
    };
  });
}
