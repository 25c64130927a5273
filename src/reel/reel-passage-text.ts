import { hotSpotText } from '../report/hot-spot-text.js';
import { fixed, largeLengthText, lengthText, type Units } from '../report/length-text.js';
import { placeText } from '../report/place-text.js';
import { safePitchText } from '../report/safe-pitch-text.js';
import { meterReading } from '../report/set-up.js';
import { trackPlaceText } from '../report/track-place.js';
import { widthText } from '../report/width-text.js';
import { wrapText } from '../report/wrap-text.js';
import type { Seconds } from '../units.js';
import { lookName } from './look-words.js';
import type { HardPlace, Reel, ReelPassage } from './reel.js';
import type { TestPlace } from './test-cut.js';

const INDENT = '   ';
const HEADS = 14;

/** One passage of a reel: where, how to cut it, what to look for, what it should measure. */
export function passageText(reel: Reel, at: number, units: Units): string[] {
  const passage = reel.passages[at];
  if (passage === undefined) return [];
  const { hard } = passage;
  const row = (head: string, text: string) =>
    wrapText(text, `${INDENT}${head.padEnd(HEADS)}`, INDENT + ' '.repeat(HEADS)).split('\n');
  return [
    `${at + 1}. ${hard
      .map(({ look }) => lookName(look))
      .filter(isFirst)
      .join(', ')}`,
    ...row('in the side', sideText(reel, passage)),
    ...row('in the reel', reelPlaceText(reel, passage)),
    ...row('cut at', diameterTexts(passage, units)),
    ...row('set', setText(reel, passage, units)),
    ...hard.flatMap((place) => [
      ...row('look', `${inReel(reel, passage, place.atSeconds)}: ${lookText(reel, place, units)}`),
      ...row('predicted', predictedText(place, units)),
      ...row('measured', measuredText(place)),
    ]),
    ...leastRows(reel, passage, units).flatMap((text) => row('', text)),
  ];
}

function isFirst<T>(value: T, at: number, all: readonly T[]): boolean {
  return all.indexOf(value) === at;
}

function sideText({ file, sampleRate }: Reel, { place }: ReelPassage): string {
  const { settings, hand } = file;
  const { firstFrame, endFrame } = place;
  const from = firstFrame / sampleRate;
  const track = trackPlaceText(from, hand?.tracks);
  const lasts = fixed((endFrame - firstFrame) / sampleRate, 3);
  return `${placeText(from, settings)}${track === '' ? '' : `, ${track}`}, for ${lasts} s; frames ${firstFrame} to ${endFrame}`;
}

function reelPlaceText({ sampleRate }: Reel, { place }: ReelPassage): string {
  const { atFrame, firstFrame, endFrame } = place;
  const until = atFrame + endFrame - firstFrame;
  return `${clock(atFrame / sampleRate)} to ${clock(until / sampleRate)}; frames ${atFrame} to ${until}`;
}

function diameterTexts({ cut }: ReelPassage, units: Units): string {
  const silent = largeLengthText(cut.silentDiameter, units);
  return `diameter ${largeLengthText(cut.startDiameter, units)} at its first sample; drop at ${silent}, for the silence before it`;
}

function setText({ file }: Reel, { cut }: ReelPassage, units: Units): string {
  const { pitchStep, depthMeter } = file.settings;
  const reading = meterReading(depthMeter, cut.width);
  const meter = reading === null ? '' : `, depth meter ${Number(fixed(reading, 2))}`;
  return `pitch ${safePitchText(cut.pitch, pitchStep, units)}, groove ${widthText(cut.width, units)}${meter}`;
}

function lookText({ file }: Reel, { look, spot, facet, bend, atSeconds }: HardPlace, units: Units) {
  const facts = {
    land: spot === null ? '' : ` On the side: ${hotSpotText(spot, file.settings, units)}`,
    width: '',
    facet: ` At worst ${fixed(facet, 2)} of the groove speed; the facets rub at 1.`,
    bend: ` At worst ${lengthText(bend, units)} of radius, the tip has ${lengthText(file.settings.playbackTip, units)}.`,
  };
  return `${lookName(look)} (side ${placeText(atSeconds, file.settings)}).${facts[look]}`;
}

function predictedText({ predicted }: HardPlace, units: Units): string {
  return `land ${landText(predicted, units)}, narrowest ${lengthText(predicted.widthMin, units)}, widest ${lengthText(predicted.widthMax, units)}`;
}

function measuredText({ look }: HardPlace): string {
  const heard = look === 'facet' || look === 'bend' ? '  seen, heard ______________' : '';
  return `land ________  narrowest ________  widest ________${heard}`;
}

/** Where the passage has less land than at the places that are looked at. */
function leastRows(reel: Reel, passage: ReelPassage, units: Units): string[] {
  const { cut, hard, leastAtSeconds, leastOnSide } = passage;
  if (hard.some(({ predicted }) => predicted.quarter === cut.least.quarter)) return [];
  return [
    `Least land of the passage ${landText(cut.least, units)}, at ${inReel(reel, passage, leastAtSeconds)}; on the side it has ${lengthText(leastOnSide, units)} there.`,
  ];
}

function landText({ land, landNominal }: TestPlace, units: Units): string {
  return `${lengthText(land, units)} – ${lengthText(landNominal, units)}`;
}

/** A program time in the reel. */
function inReel({ sampleRate }: Reel, { place }: ReelPassage, atSeconds: Seconds): string {
  const behind = Math.max(0, atSeconds - place.firstFrame / sampleRate);
  return `reel ${clock(place.atFrame / sampleRate + behind)}`;
}

/** `01:04.250`: a reel is found by ear and by the counter. */
function clock(seconds: Seconds): string {
  const milliseconds = Math.round(seconds * 1000);
  const minutes = String(Math.floor(milliseconds / 60_000)).padStart(2, '0');
  return `${minutes}:${((milliseconds % 60_000) / 1000).toFixed(3).padStart(6, '0')}`;
}
