import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { UsageError } from '../src/errors.js';
import { findProfile } from '../src/profile/find-profile.js';
import { parseProfile } from '../src/profile/profile-file.js';
import { resolveProfile } from '../src/profile/resolve-profile.js';

const resolved = (text: string, flags = {}) =>
  resolveProfile({ file: parseProfile('house.json', text), flags });

const complaintOf = (text: string, flags = {}): string => {
  try {
    resolved(text, flags);
  } catch (error) {
    if (error instanceof UsageError) return error.message;
    throw error;
  }
  return '';
};

test('a base pitch between two steps of the control is planned as the wider of them', () => {
  const { basePitch } = resolved('{ "basePitch": "91um", "pitchStep": "10um" }');
  expect(basePitch).toBeWithin(100e-6, 1e-15);
  const flags = { basePitch: '300lpi' };
  expect(resolved('{ "pitchStep": "5um" }', flags).basePitch).toBeWithin(85e-6, 1e-15);
});

describe('defaults', () => {
  // Sources beside the values in src/profile/profile-defaults.ts; the metric figures by hand.
  test.each([
    ['startDiameter', 0.2921],
    ['innerDiameter', 0.12065],
    ['rpm', 33.3333333333333],
    ['referenceVelocity', 0.07],
    ['referenceDbfs', -10],
    ['speedTolerance', 0.001],
    ['basePitch', 84.6666666666667e-6],
    ['pitchMax', 500e-6],
    ['pitchOpenSlew', 80e-6],
    ['baseWidth', 50.8e-6],
    ['widthMin', 25.4e-6],
    ['depthMax', 127e-6],
    ['depthOpenSlew', 10e-6],
    ['depthCloseSlew', 5e-6],
    ['depthTolerance', 2.5e-6],
    ['pitchTolerance', 1.5e-6],
    ['landMin', 12.7e-6],
    ['echoLand', 25.4e-6],
    ['playbackTip', 18e-6],
    ['lineTip', 8e-6],
    ['bandPitch', 1.5e-3],
  ] as const)('%s', (field, expected) => {
    expect(resolveProfile()[field]).toBeWithin(expected, 0, 1e-12);
  });

  test('the size of the disc brings its diameters and its usual speed', () => {
    const seven = resolveProfile({ flags: { disc: 7 } });
    expect(seven.rpm).toBe(45);
    expect(seven.startDiameter).toBeWithin(0.1683, 0, 1e-12);
    expect(resolved('{"disc": 7, "rpm": 33}').rpm).toBeWithin(100 / 3, 0, 1e-12);
  });

  test('33 is 33⅓, 33.29 is as measured', () => {
    expect(resolved('{"rpm": 33}').rpm).toBeWithin(33.3333333333333, 0, 1e-12);
    expect(resolved('{"rpm": 33.29}').rpm).toBe(33.29);
  });

  test('what the lathe executes is known to be unset until the file sets it', () => {
    expect(resolveProfile()).toMatchObject({ executes: 'machine', executesIsSet: false });
    expect(resolved('{"executes": "machine"}').executesIsSet).toBe(true);
  });

  test('a single field of the machine leaves the others at their defaults', () => {
    const { machine } = resolved('{"machine": {"gain": 1.2, "openSlew": "40um"}}');
    expect(machine).toMatchObject({ gain: 1.2, advanceTurns: 1, closeSlew: null });
    expect(machine.openSlew).toBeWithin(40e-6, 0, 1e-12);
  });

  test('settings cannot be changed afterwards', () => {
    const settings = resolved(
      '{"depthMeter": [{"reading": 1, "width": "1mil"}, {"reading": 2, "width": "2mil"}]}',
    );
    expect(Object.isFrozen(settings)).toBe(true);
    expect(Object.isFrozen(settings.machine)).toBe(true);
    expect(Object.isFrozen(settings.depthMeter?.[0])).toBe(true);
  });
});

describe('order', () => {
  test('a flag wins over the file, the file over the defaults; 0 dB is a value', () => {
    const settings = resolved('{"basePitch": "250lpi", "baseWidth": "60um", "referenceDbfs": 0}', {
      basePitch: '280lpi',
    });
    expect(settings.basePitch).toBeWithin(0.0254 / 280, 0, 1e-12);
    expect(settings.baseWidth).toBeWithin(60e-6, 0, 1e-12);
    expect(settings.referenceDbfs).toBe(0);
  });

  test('null takes a filter of the file out', () => {
    expect(resolved('{"ellipticalHz": 150}', { ellipticalHz: null }).ellipticalHz).toBeNull();
  });
});

describe('what is wrong is said with place, finding and expectation', () => {
  test.each([
    [
      '{"basePich": "300lpi"}',
      'house.json:1: basePich: found an unknown field; the nearest is "basePitch"',
    ],
    [
      '{\n"machine": {\n"gian": 1}}',
      'house.json:3: machine.gian: found an unknown field; the nearest is "gain"',
    ],
    ['{"zzz": 1}', 'zzz: found an unknown field; see `furrow schema profile`'],
    ['{"pitch": "300lpi"}', 'pitch: found an unknown field; the nearest is "basePitch"'],
    ['{"gain": 1}', 'gain: found an unknown field; the nearest is "gain" inside of "machine"'],
    ['{"machine.gain": 1}', 'the nearest is "gain" inside of "machine"'],
    [
      '{"machine": {"basePitch": "1mm"}}',
      'machine.basePitch: found an unknown field; the nearest is "basePitch"',
    ],
    [
      '{"depthMeter": [{"reading": 1, "widht": "1mil"}]}',
      'depthMeter[0].widht: found an unknown field; the nearest is "width"',
    ],
    ['null', 'found null, expected object'],
    ['{"__proto__": {"disc": 7}}', '__proto__: found an unknown field'],
    [
      '{\n// pitch\n"basePitch": 300}',
      'house.json:3: basePitch: found 300, expected a pitch with its unit',
    ],
    ['{"baseWidth": "300lpi"}', 'baseWidth: found "300lpi", expected a length with its unit'],
    ['{"referenceVelocity": 7}', 'found 7, expected a speed with its unit'],
    [
      '{"speedTolerance": "10"}',
      'found "10", expected a ratio from 0 to 0.05, such as 0.001 or "0.1%"',
    ],
    ['{"speedTolerance": "50%"}', 'found "50%", expected a ratio from 0 to 0.05'],
    ['{"speedTolerance": 0.5}', 'found 0.5, expected a ratio from 0 to 0.05'],
    ['{"disc": 11}', 'found 11, expected one of 12, 10, 7'],
    ['{"rpm": 1e9}', 'found 1000000000, expected a number from 10 to 100'],
    ['{"silentTurns": 1.5}', 'found 1.5, expected a whole number from 1 to 20'],
    ['{"swapChannels": "no"}', 'found "no", expected true or false'],
    ['{"medium": "metal"}', 'metal needs depthMax and landMin'],
    [
      '{"innerDiameter": "300mm"}',
      'innerDiameter must be under startDiameter; found innerDiameter "300mm", startDiameter "292.1mm"',
    ],
    ['{"startDiameter": "12in"}', 'the program must start inside the disc'],
    ['{"finishingDiameter": "125mm"}', 'the finishing groove must not lie where program may lie'],
    ['{"preferredEndDiameter": "110mm"}', 'preferredEndDiameter must lie between'],
    ['{"basePitch": "20lpi"}', 'basePitch must be at most pitchMax'],
    ['{"basePitch": "0lpi"}', 'found "0lpi", expected more than zero'],
    ['{"baseWidth": "0um"}', 'found "0um", expected more than zero'],
    ['{"pitchMax": "1e999mm"}', 'found "1e999mm", expected more than zero'],
    ['{"widthMin": "3mil"}', 'widthMin must be at most baseWidth'],
    ['{"depthMax": "20um"}', 'the unmodulated groove must not be deeper than depthMax'],
    ['{"lineTip": "20um"}', 'lineTip must be at most playbackTip'],
    ['{"facetCaution": 1.2}', 'facetCaution must be at most facetFault'],
    [
      '{"ellipticalHz": 200, "ellipticalSteps": [150, 300]}',
      'ellipticalHz must be one of ellipticalSteps',
    ],
    [
      '{"depthMeter": [{"reading": 2, "width": "1mil"}, {"reading": 1, "width": "2mil"}]}',
      'readings and widths must rise',
    ],
    ['{"machine": {"openSlew": "0um"}}', 'openSlew and closeSlew must be over zero'],
    ['[]', 'found [], expected object'],
    ['7', 'found 7, expected object'],
  ])('%s', (text, complaint) => {
    expect(complaintOf(text)).toContain(complaint);
  });

  test('a field of the machine is looked for beside the unknown one first', () => {
    expect(complaintOf('{"machine": {"gian": 1}}')).toMatch(/; the nearest is "gain"$/);
  });

  test('all at once, one line each', () => {
    expect(complaintOf('{"disc": 11, "rpm": 0, "basePich": 1}').split('\n')).toHaveLength(3);
  });

  test('by the name of the flag, where a flag is wrong or breaks a rule', () => {
    expect(complaintOf('{}', { basePitch: '300' })).toMatch(
      /^--pitch: found "300", expected a pitch/,
    );
    expect(complaintOf('{"pitchMax": "90um"}', { basePitch: '250lpi' })).toMatch(
      /^--pitch: basePitch must/,
    );
  });

  test('lacquer limits may be taken for metal once they are given', () => {
    expect(complaintOf('{"medium": "metal", "depthMax": "45um", "landMin": "5um"}')).toBe('');
  });
});

describe('the file', () => {
  test('comments, a trailing comma, a byte order mark are read over', () => {
    expect(resolved('\ufeff{ // ours\n "rpm": 45, /* single */ }').rpm).toBe(45);
  });

  test.each([
    ['{"rpm": 45,, }', 'house.json:1: '],
    ['{\n"rpm" 45}', 'house.json:2: found "45", expected colon'],
    ['', 'house.json: is empty, expected { … }'],
    ['{"rpm": NaN}', 'house.json:1: found "NaN", expected names and texts in double quotes'],
    ['{"rpm": 45', 'house.json:1: found the end of the file, expected close brace'],
    ['{"rpm": 33, "disc": 12,\n"rpm": 45}', 'house.json:2: "rpm" is set twice'],
    ['['.repeat(200_000), 'is nested too deeply'],
    [' '.repeat(2_000_000), 'is too large'],
  ])('%.20s is refused by line', (text, complaint) => {
    expect(() => parseProfile('house.json', text)).toThrow(UsageError);
    expect(() => parseProfile('house.json', text)).toThrow(complaint);
  });
});

describe('discovery', () => {
  test('takes the nearest file upwards, shown from the working folder', async () => {
    const root = await mkdtemp(join(tmpdir(), 'furrow-profile-'));
    try {
      const deep = join(root, 'a', 'b');
      await mkdir(deep, { recursive: true });
      await writeFile(join(root, 'furrow.profile.json'), '{"rpm": 45}');
      const outer = await findProfile(deep);
      expect(outer).toMatchObject({ path: '../../furrow.profile.json', value: { rpm: 45 } });
      await writeFile(join(root, 'a', 'furrow.profile.json'), '{"rpm": 33.3}');
      expect(await findProfile(deep)).toMatchObject({ value: { rpm: 33.3 } });
      // A folder of that name is no profile.
      await mkdir(join(deep, 'furrow.profile.json'));
      expect(await findProfile(deep)).toMatchObject({ value: { rpm: 33.3 } });
    } finally {
      await rm(root, { recursive: true });
    }
  });
});
