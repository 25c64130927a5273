import { describe, expect, test } from 'vitest';
import { compareForecasts, isUnchanged } from '../../src/model/compare-forecasts.js';
import type { Comparison } from '../../src/model/compare-types.js';
import type { Headroom } from '../../src/model/forecast-types.js';
import { findingWith, forecastedFile, planWith } from '../support/forecast-fixture.js';

const HEADROOM: Headroom = { fillDb: 1, traceDb: 2, recommendedDb: 1, limitedBy: null };

interface Figures {
  readonly durationSeconds?: number;
  readonly loudnessLufs?: number | null;
  readonly endDiameter?: number;
  readonly spare?: number;
  readonly headroom?: Partial<Headroom>;
}

/** A side whose machine has these figures; its other plans have none of them. */
function sideWith({ loudnessLufs, durationSeconds, headroom, ...figures }: Figures) {
  const file = forecastedFile();
  const machine = planWith({ endDiameter: 0.13, spare: 0.004, ...figures });
  const program = {
    ...file.program,
    loudnessLufs: loudnessLufs === undefined ? -14 : loudnessLufs,
  };
  const settings = { ...file.settings, levelStep: 0.5 };
  return forecastedFile(
    { program, settings },
    {
      durationSeconds: durationSeconds ?? 600,
      machine,
      plan: planWith(),
      headroom: { ...HEADROOM, ...headroom },
    },
  );
}

const compared = (before: Figures, after: Figures) =>
  compareForecasts(sideWith(before), sideWith(after));

const FIGURES = [
  'durationSeconds',
  'loudnessLufs',
  'endDiameter',
  'spare',
  'recommendedDb',
  'fillDb',
  'traceDb',
] as const;

/** Figures that are told, with what they were and are. */
function told(comparison: Comparison) {
  const figures = FIGURES.map((name) => [name, comparison[name]] as const);
  return Object.fromEntries(figures.filter(([, change]) => change !== null));
}

describe('a figure is told', () => {
  test.each([
    ['durationSeconds', 600, 600.04, 600.05],
    ['loudnessLufs', -14, -13.51, -13.5],
    ['loudnessLufs', -14, -14.49, -14.5],
    ['endDiameter', 0.13, 0.13009, 0.1301],
    ['spare', 0.004, 0.00404, 0.00405],
    ['spare', 0.004, 0.00396, 0.00395],
  ] as const)('from where on it matters: %s %d, not %d, but %d', (name, was, near, far) => {
    expect(told(compared({ [name]: was }, { [name]: near }))).toEqual({});
    expect(told(compared({ [name]: was }, { [name]: far }))).toEqual({
      [name]: { before: was, after: far },
    });
  });

  test.each([
    ['fillDb', 1, 1.49, 1.5],
    ['traceDb', 1, 0.51, 0.5],
    // A step of the level control is another level; half of one is nearest to either.
    ['recommendedDb', 1, 1.24, 1.25],
  ] as const)('of the headroom: %s %d, not %d, but %d', (name, was, near, far) => {
    const headroom = (value: number | null) => ({ headroom: { [name]: value } });
    expect(told(compared(headroom(was), headroom(near)))).toEqual({});
    expect(told(compared(headroom(was), headroom(far)))).toEqual({
      [name]: { before: was, after: far },
    });
    expect(told(compared(headroom(was), headroom(null)))).toEqual({
      [name]: { before: was, after: null },
    });
    expect(told(compared(headroom(null), headroom(was)))).toEqual({
      [name]: { before: null, after: was },
    });
    expect(told(compared(headroom(null), headroom(null)))).toEqual({});
  });
});

describe('two forecasts are unchanged', () => {
  const same = compared({}, {});

  test('where nothing that matters differs', () => {
    expect(same).toMatchObject({ offsetSeconds: 0, land: [], findings: [] });
    expect(isUnchanged(same)).toBe(true);
  });

  test.each([
    ['a shift', { offsetSeconds: 0.1 }],
    ['programs that are not alike', { offsetSeconds: null }],
    ['a verdict', { verdict: { before: 'clear', after: 'caution' } }],
    ['a figure', { fillDb: { before: 1, after: null } }],
    [
      'land',
      { land: [{ change: 'lost', atSeconds: 1, untilSeconds: 2, before: 9e-6, after: 1e-6 }] },
    ],
    [
      'a finding',
      { findings: [{ change: 'new', atSeconds: 1, before: null, after: findingWith() }] },
    ],
  ] as const)('but not with %s', (_, change) => {
    expect(isUnchanged({ ...same, ...change })).toBe(false);
  });
});

test('findings and land are compared at the time that the program has been moved by', () => {
  const at = (atSeconds: number) => {
    const finding = findingWith({ atSeconds, untilSeconds: atSeconds + 1 });
    return forecastedFile({}, { findings: [finding] });
  };
  // Turns of 1.8 s: the same finding up to two of them apart.
  expect(compareForecasts(at(100), at(103.5)).findings).toEqual([]);
  expect(compareForecasts(at(100), at(104.7)).findings.map(({ change }) => change)).toEqual([
    'gone',
    'new',
  ]);
});
