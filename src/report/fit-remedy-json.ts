import type { Remedy } from '../fit/remedy.js';
import type { RemedyJson } from './fit-schema.js';
import { roundDb, roundHz, roundSeconds, toLpi, toUm } from './numbers.js';

/** A remedy as the output writes it: rounded, with the unit in each name. */
export function remedyToJson(remedy: Remedy): RemedyJson {
  switch (remedy.kind) {
    case 'pitch-there':
      return { kind: remedy.kind, ...span(remedy), ...pitch(remedy.pitch) };
    case 'width-there':
      return { kind: remedy.kind, ...span(remedy), widthUm: toUm(remedy.width) };
    case 'level-there':
      return { kind: remedy.kind, ...span(remedy), gainDb: roundDb(remedy.gainDb) };
    case 'elliptical-there':
      return { kind: remedy.kind, ...span(remedy), ...filter(remedy) };
    case 'bell-there':
    case 'shelf-there':
      return {
        kind: remedy.kind,
        ...span(remedy),
        frequencyHz: roundHz(remedy.frequency),
        gainDb: roundDb(remedy.gainDb),
      };
    case 'silence':
      return { kind: remedy.kind, quarterTurns: remedy.quarters };
    case 'gap':
      return {
        kind: remedy.kind,
        track: remedy.place + 1,
        name: remedy.name,
        quarterTurns: remedy.quarters,
      };
    case 'track-outward':
      return {
        kind: remedy.kind,
        track: remedy.from + 1,
        name: remedy.name,
        toPlace: remedy.to + 1,
        order: remedy.order.map(fromOne),
      };
    case 'order':
      return { kind: remedy.kind, order: remedy.order.map(fromOne) };
    case 'base-pitch':
      return { kind: remedy.kind, ...pitch(remedy.pitch) };
    case 'base-width':
      return { kind: remedy.kind, widthUm: toUm(remedy.width) };
    case 'polarity':
      return { kind: remedy.kind, polarity: remedy.polarity };
    case 'level':
      return { kind: remedy.kind, gainDb: roundDb(remedy.gainDb) };
    case 'elliptical':
      return { kind: remedy.kind, ...filter(remedy) };
    case 'rpm':
      return { kind: remedy.kind, rpm: remedy.rpm };
  }
}

/** Places as the tracks of a sheet are counted. */
function fromOne(place: number): number {
  return place + 1;
}

function span(there: { readonly fromSeconds: number; readonly untilSeconds: number }) {
  return {
    fromSeconds: roundSeconds(there.fromSeconds),
    untilSeconds: roundSeconds(there.untilSeconds),
  };
}

function pitch(metres: number) {
  return { pitchUm: toUm(metres), pitchLpi: toLpi(metres) };
}

function filter({ corner, order }: { readonly corner: number; readonly order: 1 | 2 }) {
  return { ellipticalHz: roundHz(corner), order };
}
