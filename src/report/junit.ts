import { basename, dirname } from 'node:path';
import type { IntakeFinding } from '../intake/broken-rule.js';
import type { IntakeResult } from '../intake/intake-result.js';
import type { MixedFolder } from '../intake/mixed-folders.js';
import type { Severity } from '../model/forecast-types.js';
import type { Failure } from './failure.js';
import type { FindingText } from './finding-text.js';
import { intakeFindingText } from './intake-finding-text.js';
import { xmlElement, xmlText } from './junit-xml.js';
import type { Units } from './length-text.js';
import { folderFormatsText } from './mixed-formats-text.js';
import { notJudgedTexts } from './not-judged-text.js';

/** The severity from which on findings fail a test case; null: none does. */
export type FailLevel = Severity | null;

/** One file as a test case, and what became of it. */
export interface JunitCase {
  readonly xml: string;
  readonly outcome: 'passed' | 'failed' | 'error';
}

const SEVERITIES: readonly Severity[] = ['note', 'caution', 'fault'];
const SUITE = 'furrow intake';

/**
 * A file that was judged: a failure if it has findings at or above the level, with all of those in
 * words. One failure a case: readers of such files show no more. The others go to its output, and
 * what could not be judged, lest a case that passed seem to have kept all rules.
 */
export function junitCase(
  result: IntakeResult,
  level: FailLevel,
  units: Units = 'metric',
): JunitCase {
  const { findings, worst, path, settings } = result;
  const wordsOf = (finding: IntakeFinding) => intakeFindingText(finding, { settings, units });
  const told = (ones: readonly IntakeFinding[]) =>
    ones.map((one) => findingText(one, wordsOf(one)));
  const fails = ({ severity }: IntakeFinding) => level !== null && isAtLeast(severity, level);
  const grave = findings.filter(fails);
  const others = findings.filter((finding) => !fails(finding));
  const failure =
    worst === null || grave.length === 0
      ? []
      : [
          xmlElement('failure', { type: worst.id, message: wordsOf(worst).message }, [
            xmlText(told(grave).join('\n')),
          ]),
        ];
  const rest = [...told(others), ...notJudgedTexts(result)];
  const output =
    rest.length === 0 ? [] : [xmlElement('system-out', {}, [xmlText(rest.join('\n'))])];
  return {
    xml: caseXml(path, [...failure, ...output]),
    outcome: failure.length > 0 ? 'failed' : 'passed',
  };
}

/** A file that could not be read. */
export function junitError({ path, code, message }: Failure): JunitCase {
  const error = xmlElement('error', { type: code, message }, []);
  return { xml: caseXml(path, [error]), outcome: 'error' };
}

/** A folder whose files differ in format: a case beside its files, which fails at the level. */
export function junitFolder(folder: MixedFolder, level: FailLevel): JunitCase {
  const isGrave = level !== null && isAtLeast(folder.severity, level);
  const message = folderFormatsText(folder.folder, folder.mixed);
  const told = isGrave
    ? xmlElement('failure', { type: 'mixed-formats', message }, [])
    : xmlElement('system-out', {}, [xmlText(message)]);
  return {
    xml: xmlElement('testcase', { classname: folder.folder, name: 'mixed-formats' }, [told]),
    outcome: isGrave ? 'failed' : 'passed',
  };
}

/**
 * The cases of a run as one suite. No times: the same files give the same bytes.
 * Source: the schema that Jenkins checks such files by, from memory; see tests/report/junit.xsd.
 */
export function junitXml(cases: readonly JunitCase[]): string {
  const count = (outcome: JunitCase['outcome']) =>
    String(cases.filter((one) => one.outcome === outcome).length);
  const counts = {
    name: SUITE,
    tests: String(cases.length),
    failures: count('failed'),
    errors: count('error'),
  };
  const suite = xmlElement(
    'testsuite',
    counts,
    cases.map(({ xml }) => xml),
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${xmlElement('testsuites', counts, [suite])}\n`;
}

function isAtLeast(severity: Severity, level: Severity): boolean {
  return SEVERITIES.indexOf(severity) >= SEVERITIES.indexOf(level);
}

function caseXml(path: string, children: readonly string[]): string {
  return xmlElement('testcase', { classname: dirname(path), name: basename(path) }, children);
}

function findingText({ severity, id }: IntakeFinding, { message, remedy }: FindingText): string {
  return `${severity} ${id}: ${message} ${remedy}`;
}
