import { expect, test } from 'vitest';
import type { AcceptedEntry } from '../../src/accepted/accepted-schema.js';
import { applyAccepted } from '../../src/accepted/apply-accepted.js';
import { sideToJson } from '../../src/report/side-json.js';
import { sideSchema } from '../../src/report/side-schema.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const ENTRY: AcceptedEntry = {
  id: 'land-low',
  side: 'invented-side.wav',
  fromSeconds: 192.44,
  untilSeconds: 192.44,
  reason: 'heard, and fine',
  audioSha256: 'c'.repeat(64),
};

test('a finding carries the reason why it was accepted, or null', () => {
  const findings = [findingWith(), findingWith({ atSeconds: 400, untilSeconds: 401 })];
  const file = forecastedFile({ audioSha256: ENTRY.audioSha256 }, { findings });
  const side = sideSchema.parse(sideToJson(applyAccepted(file, [ENTRY]).file, { quarters: false }));
  expect(side.findings.map(({ accepted }) => accepted)).toEqual(['heard, and fine', null]);
  expect(side.voidAcceptances).toEqual([]);
});

test('a side says which acceptances are void, and why', () => {
  const file = forecastedFile({ audioSha256: 'd'.repeat(64) });
  const { file: told, voided } = applyAccepted(file, [ENTRY]);
  const side = sideSchema.parse(
    sideToJson({ ...told, voidAcceptances: voided }, { quarters: false }),
  );
  expect(side.voidAcceptances).toEqual([
    {
      id: 'land-low',
      fromSeconds: 192.44,
      untilSeconds: 192.44,
      reason: 'heard, and fine',
      why: 'audio-changed',
    },
  ]);
});
