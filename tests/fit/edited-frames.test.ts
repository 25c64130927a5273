import { describe, expect, it } from 'vitest';
import { filterBiquad } from '../../src/analysis/biquad.js';
import { editedFrames } from '../../src/fit/edited-frames.js';
import { RAMP_SECONDS, type SoundEdit } from '../../src/fit/sound-edit.js';
import { bellFilter } from '../../src/fit/tone-filters.js';
import { framesOf, withFrames, writeProgram } from '../support/fit-side.js';
import { inventedProgram, RATE } from '../support/invented-program.js';
import { settingsWith } from '../support/model-settings.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const SPAN = { fromSeconds: 1.5, untilSeconds: 2.25 };
const EDITS: readonly SoundEdit[] = [
  { kind: 'level', ...SPAN, gainDb: -3 },
  { kind: 'bell', ...SPAN, frequency: 7100, gainDb: -2.5 },
  { kind: 'shelf', ...SPAN, frequency: 3000, gainDb: -4 },
  { kind: 'elliptical', ...SPAN, corner: 150, order: 2 },
];

describe('editedFrames', () => {
  it.each(EDITS)(
    'leaves every sample outside of its seconds and ramps alone: $kind',
    async (edit) => {
      const program = inventedProgram(4);
      const path = await writeProgram(await temporaryFolder(), 'program.wav', program);
      const edited = await withFrames(path, (source) =>
        framesOf(editedFrames(source, [edit], settingsWith())),
      );
      const from = Math.round((SPAN.fromSeconds - RAMP_SECONDS) * RATE);
      const until = Math.round((SPAN.untilSeconds + RAMP_SECONDS) * RATE);
      expect(edited.left.subarray(0, from)).toEqual(program.left.subarray(0, from));
      expect(edited.right.subarray(until)).toEqual(program.right.subarray(until));
      expect(edited.left.subarray(from, until)).not.toEqual(program.left.subarray(from, until));
    },
  );

  it('gives the same frames for any range and any blocks', async () => {
    const path = await writeProgram(await temporaryFolder(), 'program.wav', inventedProgram(4));
    await withFrames(path, async (source) => {
      const edited = editedFrames(source, EDITS, settingsWith());
      const whole = await framesOf(edited);
      for (const [first, end, bytes] of [
        [70_001, 90_000, 1600],
        [0, 66_150, 2 ** 17],
        [99_000, 176_400, 48],
      ] as const) {
        const part = await framesOf(edited, first, end, bytes);
        expect(part.left).toEqual(whole.left.subarray(first, end));
        expect(part.right).toEqual(whole.right.subarray(first, end));
      }
    });
  });

  it('changes the level in full between its seconds', async () => {
    const program = inventedProgram(4);
    const path = await writeProgram(await temporaryFolder(), 'program.wav', program);
    const [edit] = EDITS;
    const edited = await withFrames(path, (source) =>
      framesOf(editedFrames(source, edit === undefined ? [] : [edit], settingsWith())),
    );
    const inside = [SPAN.fromSeconds * RATE, SPAN.untilSeconds * RATE] as const;
    const expected = program.right.subarray(...inside).map((value) => value * 10 ** (-3 / 20));
    expect(edited.right.subarray(...inside)).toBeWithin(expected, 1e-15, 1e-12);
  });

  it('filters in its seconds as if the filter had run from the start of the program', async () => {
    const program = inventedProgram(4);
    const path = await writeProgram(await temporaryFolder(), 'program.wav', program);
    const edit: SoundEdit = { kind: 'bell', ...SPAN, frequency: 30, gainDb: -6 };
    const edited = await withFrames(path, (source) =>
      framesOf(editedFrames(source, [edit], settingsWith())),
    );
    const inside = [SPAN.fromSeconds * RATE, SPAN.untilSeconds * RATE] as const;
    const whole = filterBiquad(program.left, bellFilter(30, -6, RATE));
    expect(edited.left.subarray(...inside)).toBeWithin(whole.subarray(...inside), 1e-9);
  });

  it('takes the difference of the channels, and leaves their sum', async () => {
    const program = inventedProgram(4);
    const path = await writeProgram(await temporaryFolder(), 'program.wav', program);
    const edited = await withFrames(path, (source) =>
      framesOf(
        editedFrames(
          source,
          [{ kind: 'elliptical', fromSeconds: 1, untilSeconds: 3, corner: 300, order: 1 }],
          settingsWith(),
        ),
      ),
    );
    const sum = (one: Float64Array, other: Float64Array) => one.map((v, n) => v + other[n]!);
    const power = (one: Float64Array, other: Float64Array) =>
      one.subarray(RATE, 3 * RATE).reduce((p, v, n) => p + (v - other[RATE + n]!) ** 2, 0);
    expect(sum(edited.left, edited.right)).toBeWithin(sum(program.left, program.right), 1e-14);
    expect(power(edited.left, edited.right)).toBeLessThan(0.5 * power(program.left, program.right));
  });
});
