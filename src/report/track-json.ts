import type { RunningOrder, TrackFigures } from '../model/forecast-types.js';
import { roundDb, roundHz, roundRatio, roundSeconds, toMm, toUm } from './numbers.js';
import type { OrderJson, TrackJson } from './track-schema.js';

export function orderToJson(order: RunningOrder): OrderJson {
  return {
    tracks: [...order.order],
    bendShareBefore: roundRatio(order.bendShareBefore),
    bendShare: roundRatio(order.bendShare),
    isExhaustive: order.isExhaustive,
  };
}

/** One track as the output writes it: rounded, with the unit in each name; times of the side. */
export function trackToJson(track: TrackFigures): TrackJson {
  const { fromSeconds, untilSeconds, worst } = track;
  return {
    name: track.name,
    startsAtSeconds: roundSeconds(fromSeconds),
    durationSeconds: roundSeconds(untilSeconds - fromSeconds),
    startDiameterMm: toMm(track.startDiameter),
    endDiameterMm: toMm(track.endDiameter),
    averageDb: roundDb(track.averageDb),
    loudestDb: roundDb(track.loudestDb),
    loudestAtSeconds: roundSeconds(track.loudestAtSeconds),
    meanFrequencyHz: roundHz(track.meanFrequency),
    landMinUm: toUm(track.landMin),
    landMinAtSeconds: roundSeconds(track.landMinAtSeconds),
    bendShareSpherical: roundRatio(track.bendShareSpherical),
    bendShareLine: roundRatio(track.bendShareLine),
    worst:
      worst === null
        ? null
        : { id: worst.id, severity: worst.severity, atSeconds: roundSeconds(worst.atSeconds) },
  };
}
