import { describe, expect, test } from 'vitest';
import { UsageError } from '../../src/errors.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { layOutSide } from '../../src/sheet/lay-out-side.js';
import { parseSheet } from '../../src/sheet/read-sheet.js';
import { sideSettings } from '../../src/sheet/side-settings.js';
import { layOut, writeWav } from '../support/sheet-side.js';
import { inBoth } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';

/** A folder with two silent files, of 3 and 2 s. */
async function album(rate = 8000): Promise<string> {
  const folder = await temporaryFolder();
  const format = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: rate } as const;
  await writeWav(folder, 'one.wav', inBoth(new Float64Array(3 * rate)), format);
  await writeWav(folder, 'two.wav', inBoth(new Float64Array(2 * rate)), format);
  return folder;
}

describe('tracks', () => {
  test('lie one behind the other, and are called as the sheet says or as their files', async () => {
    const { hand, frames } = await layOut(await album(), {
      tracks: [
        { file: 'one.wav', gapSeconds: 0.5 },
        { file: 'two.wav', gapSeconds: 2, name: 'Ember Row' },
      ],
    });
    expect(hand.tracks).toEqual([
      { name: 'one', isPinned: false, fromSeconds: 0.5, untilSeconds: 3.5 },
      { name: 'Ember Row', isPinned: false, fromSeconds: 5.5, untilSeconds: 7.5 },
    ]);
    expect(frames).toBe(7.5 * 8000);
  });

  test('are told with their trims and fades, where the sheet has any', async () => {
    const { hand } = await layOut(await album(), {
      tracks: [{ file: 'one.wav' }, { file: 'two.wav', trimDb: -1.5, fadeOutSeconds: 1 }],
    });
    expect(hand.tracks.map(({ trim }) => trim)).toEqual([
      undefined,
      { gainDb: -1.5, fadeInSeconds: 0, fadeOutSeconds: 1 },
    ]);
  });

  test('may be stretches of their files, by seconds or to the sample', async () => {
    const { tracks } = await layOut(await album(), {
      tracks: [
        { file: 'one.wav', fromSeconds: 0.5, untilSeconds: 2.25 },
        { file: 'one.wav', fromSample: 18_001, untilSample: 23_999 },
      ],
    });
    expect(tracks.map(({ firstFrame, endFrame }) => [firstFrame, endFrame])).toEqual([
      [4000, 18_000],
      [18_001, 23_999],
    ]);
  });

  test('carry base pitch, base width and pins, in the time of the program', async () => {
    const { hand, tracks } = await layOut(await album(), {
      tracks: [
        { file: 'one.wav', basePitch: [{ fromSeconds: 1, pitch: '100um' }] },
        {
          file: 'two.wav',
          gapSeconds: 2,
          pinned: true,
          basePitch: [{ fromSeconds: -1, pitch: '250lpi' }],
          baseWidth: [{ fromSeconds: 0, width: '2.5mil' }],
        },
      ],
    });
    expect(hand.basePitch.map(({ fromSeconds }) => fromSeconds)).toEqual([1, 4]);
    expect(hand.basePitch.map(({ pitch }) => pitch)).toBeWithin([100e-6, 101.6e-6], 1e-12);
    expect(hand.baseWidth.map(({ fromSeconds }) => fromSeconds)).toEqual([5]);
    expect(hand.baseWidth[0]?.width).toBeWithin(63.5e-6, 1e-12);
    expect(tracks.map(({ isPinned }) => isPinned)).toEqual([false, true]);
  });

  test('have a marker in the middle of the gap before them, the profile’s or their own', async () => {
    const { hand, settings } = await layOut(await album(), {
      tracks: [
        { file: 'one.wav' },
        { file: 'two.wav', gapSeconds: 2, marker: true },
        { file: 'two.wav', gapSeconds: 3, marker: { seconds: 0.5, pitch: '1mm' } },
        { file: 'two.wav', gapSeconds: 3, marker: false },
        { file: 'two.wav', gapSeconds: 3 },
      ],
    });
    expect(hand.bands).toEqual([
      { fromSeconds: 3.5, untilSeconds: 4.5, pitch: settings.bandPitch },
      { fromSeconds: 8.25, untilSeconds: 8.75, pitch: 0.001 },
    ]);
  });
});

describe('refused before work begins is', () => {
  test.each([
    [
      'an end behind the file',
      { untilSeconds: 3.5 },
      'untilSeconds: found 3.5,',
      'has 24000 samples or 3 s',
    ],
    [
      'a beginning behind it',
      { fromSample: 24_000 },
      'fromSample: found 24000',
      'less than where the track ends',
    ],
    [
      'a track of nothing',
      { fromSeconds: 1, untilSeconds: 1 },
      'fromSeconds: found 1',
      'less than where the track ends',
    ],
    [
      'fades longer than the track',
      { fadeInSeconds: 2, fadeOutSeconds: 1.5 },
      'fadeInSeconds: found fades of 3.5 s',
      'lasts 3 s',
    ],
    [
      'a marker longer than its gap',
      { gapSeconds: 0.5, marker: true },
      'marker: found a band of 1 s in a gap of 0.5 s',
      'expected room',
    ],
    [
      'a time before the one of the track before',
      { basePitch: [{ fromSeconds: -2.5, pitch: '90um' }] },
      'basePitch[0].fromSeconds: found a time before',
      'a later one',
    ],
    [
      'a pitch wider than the lathe can open',
      { basePitch: [{ fromSeconds: 1, pitch: '600um' }] },
      'basePitch[0]: found 600um',
      'expected at most pitchMax, 500um',
    ],
    [
      'a pitch of no lines',
      { basePitch: [{ fromSeconds: 1, pitch: '0lpi' }] },
      'basePitch[0]: found no pitch',
      'expected one',
    ],
    [
      'a groove under the least width',
      { baseWidth: [{ fromSeconds: 1, width: '20um' }] },
      'baseWidth[0]: found 20um',
      'expected at least widthMin, 25.4um',
    ],
    [
      'a groove deeper than the coating',
      { baseWidth: [{ fromSeconds: 1, width: '300um' }] },
      'baseWidth[0]: found 300um',
      'deeper than depthMax, 127um',
    ],
    [
      'a marker of no lines',
      { gapSeconds: 2, marker: { pitch: '0lpi' } },
      'marker: found no pitch',
      'expected one',
    ],
  ])('%s', async (_, fields, place, rest) => {
    const folder = await album();
    const first = { file: 'two.wav', basePitch: [{ fromSeconds: 0, pitch: '90um' }] };
    const refused = layOut(folder, { tracks: [first, { file: 'one.wav', ...fields }] });
    await expect(refused).rejects.toThrow(UsageError);
    await expect(refused).rejects.toThrow(`sheet.json:1: sides[0].tracks[1].${place}`);
    await expect(refused).rejects.toThrow(rest);
  });
});

test('every file that cannot be read is a failure of its own, each once', async () => {
  const folder = await album();
  const tracks = ['gone.wav', 'one.wav', 'lost.wav', 'gone.wav'].map((file) => ({ file }));
  const sheet = { format: 'furrow.sheet/1', sides: [{ name: 'A', tracks }] };
  const file = parseSheet(`${folder}/sheet.json`, JSON.stringify(sheet));
  const laid = await layOutSide(file, 0, resolveProfile());
  const failures = 'failures' in laid ? laid.failures : [];
  expect(failures.map(({ path, code }) => [path, code])).toEqual([
    [`${folder}/gone.wav`, 'not-found'],
    [`${folder}/lost.wav`, 'not-found'],
  ]);
});

describe('an elliptical filter', () => {
  test('whose corner the profile has no position for is refused', async () => {
    const settings = { ...resolveProfile(), ellipticalSteps: [150, 300] };
    const refused = layOut(
      await album(),
      {
        tracks: [
          { file: 'one.wav', ellipticalHz: 150 },
          { file: 'two.wav', ellipticalHz: 200 },
        ],
      },
      settings,
    );
    await expect(refused).rejects.toThrow('tracks[1].ellipticalHz: found 200, expected one of');
    await expect(refused).rejects.not.toThrow('tracks[0]');
  });

  test('that all tracks have is the side’s', async () => {
    const own = { ellipticalHz: 150, ellipticalOrder: 2 };
    const { settings, tracks, isUntouched } = await layOut(await album(), {
      tracks: [
        { file: 'one.wav', ...own },
        { file: 'two.wav', ...own },
      ],
    });
    expect(settings).toMatchObject(own);
    expect(tracks.map(({ elliptical }) => elliptical)).toEqual([null, null]);
    expect(isUntouched).toBe(true);
  });

  test('that one track has is that track’s; the others keep the side’s', async () => {
    const { settings, tracks, hand, isUntouched } = await layOut(
      await album(),
      { tracks: [{ file: 'one.wav', ellipticalHz: 200 }, { file: 'two.wav' }] },
      { ...resolveProfile(), ellipticalHz: 80 },
    );
    expect(settings.ellipticalHz).toBe(80);
    expect(hand.tracks.map(({ elliptical }) => elliptical?.corner)).toEqual([200, 80]);
    expect(tracks.map(({ elliptical }) => elliptical)).toEqual([
      { corner: 200, order: 1 },
      { corner: 80, order: 1 },
    ]);
    expect(isUntouched).toBe(false);
  });
});

describe('a side’s settings', () => {
  const file = parseSheet(
    'album.json',
    JSON.stringify({
      format: 'furrow.sheet/1',
      sides: [
        { name: 'A', disc: 7, basePitch: '250lpi', tracks: [{ file: 'a.wav' }] },
        { name: 'B', ellipticalHz: 120, tracks: [{ file: 'a.wav' }] },
      ],
    }),
  );

  test('win over the profile’s, and options over both', () => {
    const settings = sideSettings(file, 0, { flags: { rpm: 33.3 } });
    expect(settings).toMatchObject({ disc: 7, rpm: 33.3 });
    expect(settings.basePitch).toBeWithin(0.0254 / 250, 1e-15);
    expect(sideSettings(file, 0, { flags: { basePitch: '100um' } }).basePitch).toBeWithin(
      100e-6,
      1e-15,
    );
    expect(sideSettings(file, 1, {})).toMatchObject({ disc: 12, ellipticalHz: 120 });
  });

  test('that do not go with the profile are told with the side’s place', () => {
    const flags = { ellipticalSteps: [150, 300] };
    expect(() => sideSettings(file, 1, { flags })).toThrow(/album\.json:1: sides\[1\]: .*one of/s);
  });
});
