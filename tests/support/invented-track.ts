import type { TrackFigures } from '../../src/model/forecast-types.js';
import { findingWith } from './forecast-fixture.js';

/** An invented track of three minutes. */
export function trackWith(changes: Partial<TrackFigures> = {}): TrackFigures {
  return {
    name: 'invented track',
    fromSeconds: 182.5,
    untilSeconds: 362.75,
    startDiameter: 0.2702,
    endDiameter: 0.2484,
    averageDb: -12.34,
    loudestDb: -4.06,
    loudestAtSeconds: 301.05,
    meanFrequency: 3456.7,
    landMin: 13.04e-6,
    landMinAtSeconds: 299.7,
    bendShareSpherical: 0.00321,
    bendShareLine: 0,
    worst: findingWith({ id: 'tight-bend', severity: 'caution', atSeconds: 310 }),
    ...changes,
  };
}
