// Outside program: sox, effect `riaa` (replay). Its curve was measured from its impulse response
// by tests/reference-signals/record.mjs; version and figures are in expected/sox-riaa.json.
// sox is itself within 0.02 dB of the formula from 100 Hz to 20 kHz and 0.065 dB low at 20 Hz.
import { describe, expect, test } from 'vitest';
import { recordedCurves } from '../reference-signals/recorded.js';
import { soxReplayCurve } from '../reference-signals/replay-curves.mjs';
import { delayFree } from '../support/delay-free.js';
import { recordingResponse } from '../support/measured-response.js';
import { needProgram } from '../support/outside-program.js';

describe.each(recordedCurves('sox-riaa'))('sox riaa at $rate Hz', (curve) => {
  const { rate, hz } = curve;
  const cut = recordingResponse('velocity', rate, hz);
  const played = cut.db.map((db, point) => db + curve.db[point]!);

  test('replaying what furrow cuts gives the program back, 100 Hz to 20 kHz, within 0.02 dB', () => {
    const from = hz.findIndex((frequency) => frequency >= 100);
    expect(played.slice(from)).toBeWithin(new Float64Array(hz.length - from), 0.02);
  });

  test('and from 20 Hz on within the 0.065 dB that sox itself lacks there', () => {
    expect(played).toBeWithin(new Float64Array(hz.length), 0.066);
  });

  test('the phases undo each other within 1 degree, but for a constant delay', () => {
    const phase = cut.degrees.map((degrees, point) => degrees + curve.degrees[point]!);
    expect(delayFree(hz, phase)).toBeWithin(new Float64Array(hz.length), 1);
  });

  test('the recording is what the program says here', (context) => {
    needProgram('sox', context);
    const live = soxReplayCurve(rate);
    expect(live.hz).toEqual(hz);
    expect(live.db).toBeWithin(curve.db, 0.001);
    expect(live.degrees).toBeWithin(curve.degrees, 0.01);
  });
});
