import type { Remedy } from '../fit/remedy.js';
import type { Settings } from '../settings.js';
import { MIL } from '../units.js';
import { fixed, frequencyText, lengthText, levelText, type Units } from './length-text.js';
import { timeText } from './place-text.js';
import { safePitchText } from './safe-pitch-text.js';
import { safeText } from './safe-text.js';

/** What a remedy does, where it is known without: `elliptical 150 Hz (6 dB/oct)`. */
export function remedyDeed(remedy: Remedy, { pitchStep }: Settings, units: Units): string {
  switch (remedy.kind) {
    case 'pitch-there':
    case 'base-pitch':
      return `base pitch ${safePitchText(remedy.pitch, pitchStep, units)}`;
    case 'width-there':
    case 'base-width':
      return `groove ${widthText(remedy.width, units)}`;
    case 'level-there':
    case 'level':
      return `level ${gainText(remedy.gainDb)}`;
    case 'elliptical-there':
    case 'elliptical':
      return `elliptical ${frequencyText(remedy.corner)} (${6 * remedy.order} dB/oct)`;
    case 'bell-there':
      return `${gainText(remedy.gainDb)} at ${frequencyText(remedy.frequency)}`;
    case 'shelf-there':
      return `${gainText(remedy.gainDb)} from ${frequencyText(remedy.frequency)} up`;
    case 'gap':
      return `half a turn more before track ${remedy.place + 1}`;
    case 'track-outward':
      return `track ${remedy.from + 1} moved to place ${remedy.to + 1}`;
    case 'order':
      return `running order ${remedy.order.map((track) => track + 1).join('-')}`;
    case 'silence':
      return 'half a turn more silence first';
    case 'polarity':
      return 'both channels inverted';
    case 'rpm':
      return `${Number(fixed(remedy.rpm, 2))} rpm`;
  }
}

/** The same with the named seconds: `elliptical 150 Hz (6 dB/oct) from 12:30.0 to 12:36.0`. */
export function remedyText(remedy: Remedy, settings: Settings, units: Units): string {
  const deed = remedyDeed(remedy, settings, units);
  if (remedy.kind === 'gap') return `${deed}, ${safeText(remedy.name)},`;
  if (remedy.kind === 'track-outward') {
    return deed.replace(' moved', `, ${safeText(remedy.name)}, moved`);
  }
  if (!('fromSeconds' in remedy)) return deed;
  return `${deed} from ${clockText(remedy.fromSeconds, settings)} to ${clockText(remedy.untilSeconds, settings)}`;
}

/** A time of the program; at half speed the lathe's too. */
export function clockText(seconds: number, { speedFactor }: Settings): string {
  const program = timeText(seconds);
  return speedFactor === 1 ? program : `${program} (lathe ${timeText(seconds / speedFactor)})`;
}

function gainText(gainDb: number): string {
  return levelText(gainDb, Math.abs(gainDb * 10 - Math.round(gainDb * 10)) > 1e-6 ? 1 : 0);
}

function widthText(width: number, units: Units): string {
  const mil = `${fixed(width / MIL, 2)} mil`;
  return units === 'us' ? mil : `${mil} (${lengthText(width, units)})`;
}
