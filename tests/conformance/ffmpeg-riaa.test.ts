// Outside program: ffmpeg, filter `aemphasis`, type riaa, mode reproduction. Its curve was measured
// from its impulse response by tests/reference-signals/record.mjs; version and figures are in
// expected/ffmpeg-riaa.json. Only to 1 kHz: there it is within 0.006 dB of the formula, and above
// 2 kHz it is not usable. sox-riaa.test.ts has the rest of the band.
import { describe, expect, test } from 'vitest';
import { recordedCurves } from '../reference-signals/recorded.js';
import { ffmpegReplayCurve } from '../reference-signals/replay-curves.mjs';
import { delayFree } from '../support/delay-free.js';
import { recordingResponse } from '../support/measured-response.js';
import { needProgram } from '../support/outside-program.js';

describe.each(recordedCurves('ffmpeg-riaa'))('ffmpeg riaa at $rate Hz', (curve) => {
  const { rate, hz } = curve;
  const cut = recordingResponse('velocity', rate, hz);

  test('replaying what furrow cuts gives the program back, 20 Hz to 1 kHz, within 0.01 dB', () => {
    const played = cut.db.map((db, point) => db + curve.db[point]!);
    expect(played).toBeWithin(new Float64Array(hz.length), 0.01);
  });

  test('the phases undo each other within 0.1 degree, but for a constant delay', () => {
    const phase = cut.degrees.map((degrees, point) => degrees + curve.degrees[point]!);
    expect(delayFree(hz, phase)).toBeWithin(new Float64Array(hz.length), 0.1);
  });

  test('the recording is what the program says here', (context) => {
    needProgram('ffmpeg', context);
    const live = ffmpegReplayCurve(rate);
    expect(live.hz).toEqual(hz);
    expect(live.db).toBeWithin(curve.db, 0.001);
    expect(live.degrees).toBeWithin(curve.degrees, 0.01);
  });
});
