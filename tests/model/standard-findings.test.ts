import { describe, expect, test } from 'vitest';
import { forecastSide } from '../../src/model/forecast-model.js';
import { type HandBand, NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

const ABOUT = { levelDb: 0, planner: 'fixed', source: SOUND_SOURCE } as const;

function offStandard(changes: Partial<Settings>, bands: readonly HandBand[] = []) {
  const settings = settingsWith({ executes: 'fixed', ...changes });
  const hand = { ...NOTHING_BY_HAND, bands };
  const { findings, verdict } = forecastSide(emptyMotion(18), settings, { ...ABOUT, hand });
  const told = findings.filter(({ id }) => id === 'off-standard');
  return { told, verdict };
}

// IEC 98:1987, 8.4, 8.5, 8.8, 8.9, and RIAA for bands, 16 per inch, all from secondary texts.
describe('a dimension of the disc', () => {
  test.each<[string, Partial<Settings>, Partial<Settings>, number]>([
    ['start', { startDiameter: 0.2926 }, { startDiameter: 0.2927 }, 0.2926],
    ['start', { disc: 10, startDiameter: 0.2418 }, { disc: 10, startDiameter: 0.2419 }, 0.2418],
    ['start', { disc: 7, startDiameter: 0.1683 }, { disc: 7, startDiameter: 0.1684 }, 0.1683],
    ['lead-in', { leadInPitch: 0.8e-3 }, { leadInPitch: 0.79e-3 }, 0.8e-3],
    ['lead-in', { leadInPitch: 1.6e-3 }, { leadInPitch: 1.61e-3 }, 1.6e-3],
    ['lead-out', { leadOutPitch: 3.2e-3 }, { leadOutPitch: 3.19e-3 }, 3.2e-3],
    ['lead-out', { leadOutPitch: 9.6e-3 }, { leadOutPitch: 9.61e-3 }, 9.6e-3],
    ['finishing', { finishingDiameter: 0.1056 }, { finishingDiameter: 0.1055 }, 0.1056],
    ['finishing', { finishingDiameter: 0.1072 }, { finishingDiameter: 0.1073 }, 0.1072],
  ])('%s: %j is within the standard, %j is not', (detail, within, outside, limit) => {
    const disc = (changes: Partial<Settings>) =>
      changes.disc === 7 ? { finishingDiameter: 0.0974, ...changes } : changes;
    expect(offStandard(disc(within)).told).toEqual([]);
    const { told, verdict } = offStandard(disc(outside));
    expect(told).toMatchObject([{ detail, severity: 'note', atSeconds: null }]);
    expect(told[0]?.limit).toBeWithin(limit, 1e-12);
    expect(verdict).toBe('clear');
  });

  test('of a 7-inch disc has a finishing groove of its own', () => {
    const small = { disc: 7, startDiameter: 0.168 } as const;
    expect(offStandard({ ...small, finishingDiameter: 0.0964 }).told).toEqual([]);
    expect(offStandard({ ...small, finishingDiameter: 0.0984 }).told).toEqual([]);
    expect(offStandard({ ...small, finishingDiameter: 0.1064 }).told).toHaveLength(1);
  });

  test('of a marker band is at most an inch in 16 turns, and is told where it is not', () => {
    const band = (pitch: number) => ({ fromSeconds: 8, untilSeconds: 9, pitch });
    expect(offStandard({}, [band(1.5875e-3)]).told).toEqual([]);
    expect(offStandard({}, [band(1.5e-3), band(1.6e-3)]).told).toMatchObject([
      { detail: 'band', atSeconds: 8, value: 1.6e-3 },
    ]);
  });

  test.each([12, 10, 7] as const)(
    'of the default profile, %s inches, is on the standard',
    (disc) => {
      const settings = resolveProfile({ flags: { disc } });
      const { findings } = forecastSide(emptyMotion(9), settings, ABOUT);
      expect(findings.filter(({ id }) => id === 'off-standard')).toEqual([]);
    },
  );
});

describe('the lead-out', () => {
  /**
   * A silent side of ten turns and one silent turn behind it, at 100 µm, whose silence ends at a
   * radius of so much more than that of the finishing groove.
   */
  function sideWith(room: number, leadOutPitch: number, changes: Partial<Settings> = {}) {
    const finishingDiameter = 0.1064;
    const settings = settingsWith({
      ...EXACT,
      basePitch: 100e-6,
      executes: 'fixed',
      finishingDiameter,
      startDiameter: finishingDiameter + 2 * (room + 11 * 100e-6),
      innerDiameter: finishingDiameter,
      leadOutPitch,
      ...changes,
    });
    const { findings, verdict } = forecastSide(emptyMotion(18), settings, ABOUT);
    const told = findings.filter(({ id }) => id === 'too-long' || id === 'off-standard');
    return { told, verdict };
  }

  test.each([
    ['a turn fits', 6.41e-3, 6.4e-3, null, 'clear'],
    ['just', 6.4e-3, 6.4e-3, null, 'clear'],
    ['only at a tighter pitch of the standard', 6.39e-3, 6.4e-3, 'note', 'clear'],
    ['at the least pitch of the standard', 3.2e-3, 6.4e-3, 'note', 'clear'],
    ['at no pitch of the standard', 3.19e-3, 6.4e-3, 'caution', 'caution'],
  ])('%s: %d m of radius at %d m a turn', (_, room, pitch, severity, verdict) => {
    const side = sideWith(room, pitch);
    expect(side.verdict).toBe(verdict);
    if (severity === null) expect(side.told).toEqual([]);
    else {
      const id = severity === 'note' ? 'off-standard' : 'too-long';
      expect(side.told).toMatchObject([{ id, severity, detail: 'lead-out-room', atSeconds: 18 }]);
      expect(side.told[0]?.value).toBeWithin(0.1064 + 2 * room, 1e-12);
      expect(side.told[0]?.limit).toBeWithin(0.1064 + 2 * pitch, 1e-12);
    }
  });

  test('is not told of a side that is too long anyway', () => {
    const { told } = sideWith(3e-3, 6.4e-3, { innerDiameter: 0.115 });
    expect(told).toMatchObject([{ severity: 'fault', detail: 'base-pitch' }]);
  });

  test('is told beside the diameter that the house prefers', () => {
    const { told } = sideWith(3e-3, 6.4e-3, { preferredEndDiameter: 0.1141 });
    expect(told.map(({ detail }) => detail)).toEqual(['base-pitch', 'lead-out-room']);
  });
});
