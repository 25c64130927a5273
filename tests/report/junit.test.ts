import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intakeResult } from '../../src/intake/intake-result.js';
import { NO_RULES } from '../../src/intake/rules.js';
import type { Severity } from '../../src/model/forecast-types.js';
import {
  type FailLevel,
  junitCase,
  junitError,
  junitFolder,
  junitXml,
} from '../../src/report/junit.js';
import { xmlText } from '../../src/report/junit-xml.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';
import { complaintsOf } from '../support/junit-complaints.js';
import { needProgram } from '../support/outside-program.js';

const HOSTILE = '<script>&"\'\u0000\u001b[31m\u007f\u0085\ufffe\uffff\u202e\ud800]]>\r\n=\t.wav';

const resultOf = (severities: readonly Severity[], path = 'in/a.wav') =>
  intakeResult(
    path,
    forecastedFile({}, { findings: severities.map((severity) => findingWith({ severity })) }),
    NO_RULES,
  );

describe('a JUnit report', () => {
  test.each<[FailLevel, string]>([
    ['fault', 'fault'],
    ['caution', 'fault caution'],
    ['note', 'fault caution note'],
    [null, ''],
  ])(
    'at %s has the findings from there on in its failure, the others in its output',
    (level, failing) => {
      const { xml, outcome } = junitCase(resultOf(['fault', 'caution', 'note']), level);
      const severities = (text = '') =>
        [...text.matchAll(/\b(fault|caution|note) land-low/g)].map(([, severity]) => severity);
      const failure = /<failure.*<\/failure>/s.exec(xml)?.[0];
      const output = /<system-out.*<\/system-out>/s.exec(xml)?.[0];
      expect(severities(failure).join(' ')).toBe(failing);
      expect(severities(failure).concat(severities(output))).toEqual(['fault', 'caution', 'note']);
      expect(outcome).toBe(failing === '' ? 'passed' : 'failed');
    },
  );

  test('says of a case that passed which rules it was not judged by', () => {
    const asks = { ...NO_RULES, headSilence: { least: 1, most: null } };
    const saved = intakeResult('in/a.motion', forecastedFile(), asks);
    const { xml, outcome } = junitCase(saved, 'fault');
    expect(outcome).toBe('passed');
    expect(/<system-out>.*<\/system-out>/s.exec(xml)?.[0]).toContain('rule-head is not judged');
    expect(junitCase(resultOf([]), 'fault').xml).not.toContain('not judged');
  });

  test('has lengths in the units of the run', () => {
    const lift = findingWith({ id: 'lift', severity: 'fault', value: 12.7e-6, limit: 25.4e-6 });
    const result = intakeResult('a.wav', forecastedFile({}, { findings: [lift] }), NO_RULES);
    expect(junitCase(result, 'fault').xml.match(/25\.4 µm/g)).toHaveLength(2);
    expect(junitCase(result, 'fault', 'us').xml.match(/1\.00 mil/g)).toHaveLength(2);
  });

  test('says of a folder that fails why, where viewers look for it', () => {
    const shares = [
      { value: '44.1 kHz', paths: ['in/a.wav', 'in/b.wav'] },
      { value: '48 kHz', paths: ['in/c.wav'] },
    ];
    const mixed = [{ folder: 'in', aspect: 'rate', shares }] as const;
    const { xml } = junitFolder({ folder: 'in', severity: 'fault', mixed }, 'fault');
    expect(xml).toContain(
      'message="formats differ in the folder in: 44.1 kHz (2), 48 kHz (c.wav)"',
    );
  });

  test('has as many tests, failures and errors as it says', () => {
    const failure = { path: 'in/b.wav', code: 'not-wav', message: 'in/b.wav: is none' } as const;
    const clear = junitCase(resultOf([]), 'fault');
    const xml = junitXml([junitCase(resultOf(['fault']), 'fault'), clear, junitError(failure)]);
    expect(xml.match(/<testsuite .*>/)?.[0]).toContain('tests="3" failures="1" errors="1"');
    expect(xml.match(/<testcase /g)).toHaveLength(3);
    expect(xml.match(/<failure /g)).toHaveLength(1);
    expect(xml.match(/<error type="not-wav" message="in\/b.wav: is none"\/>/g)).toHaveLength(1);
  });

  test('keeps to the schema, whatever names and messages hold', async (context) => {
    needProgram('xmllint', context);
    const folder = {
      folder: HOSTILE,
      severity: 'note',
      mixed: [{ folder: HOSTILE, aspect: 'rate', shares: [{ value: HOSTILE, paths: [HOSTILE] }] }],
    } as const;
    const failure = { path: HOSTILE, code: 'not-wav', message: HOSTILE } as const;
    const xml = junitXml([
      junitCase(resultOf(['fault', 'note'], `${HOSTILE}/${HOSTILE}`), 'fault'),
      junitCase(resultOf([], HOSTILE), 'fault'),
      junitError(failure),
      junitFolder(folder, 'note'),
      junitFolder(folder, 'fault'),
    ]);
    expect(await complaintsOf(xml)).toBe('');
    expect(await complaintsOf(junitXml([]))).toBe('');
    // The schema can be broken.
    expect(await complaintsOf(xml.replace('<testcase classname=', '<testcase class='))).toMatch(
      /attribute 'class' is not allowed/,
    );
  });

  test('is well-formed XML 1.0 for any text, and shows what XML forbids', async (context) => {
    needProgram('xmllint', context);
    const anything = fc.string({ unit: 'binary', maxLength: 300 });
    const texts = fc.sample(anything, 200);
    expect(
      await complaintsOf(
        junitXml(texts.map((path) => junitCase(resultOf(['note'], path), 'note'))),
      ),
    ).toBe('');
    expect(xmlText('\u0000\u001b\ufffe')).toBe('\\u{0}\\u{1b}\\u{fffe}');
  });
});
