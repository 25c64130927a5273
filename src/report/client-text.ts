import { clientFailure } from './client-failure.js';
import { clientJudgement } from './client-judgement.js';
import { clientProblems, type Problem } from './client-problems.js';
import type { ClientSide } from './client-side.js';
import { minutesText, spansText } from './client-times.js';
import type { Failure } from './failure.js';
import { safeText } from './safe-text.js';
import { wrapText } from './wrap-text.js';

const TITLE = 'Your files for the record';
const INTRODUCTION =
  'For each file this says whether it can be cut onto a record as it is and, if not, what to ' +
  'change. Times are minutes and seconds from the start of the file.';

/**
 * A letter to those who made the music and have never seen a lathe: whether each file can be cut,
 * what is wrong with it at which time, and what to send instead. Nothing of land, pitch or bends;
 * what the house mends by itself is not in it, and neither is what it accepts.
 * @param sides of clientSide, in the order they are told; failures come after them
 */
export function clientText(sides: readonly ClientSide[], failures: readonly Failure[]): string {
  const parts = [...sides.map(sideText), ...failures.map(failureText)];
  return [heading(TITLE, '='), wrapText(INTRODUCTION, '', ''), ...parts].join('\n\n').concat('\n');
}

function sideText(side: ClientSide): string {
  const problems = clientProblems(side);
  return [
    heading(`${safeText(side.name)}, ${minutesText(side.durationSeconds)}`, '-'),
    wrapText(clientJudgement(side, problems), '', ''),
    ...problems.map((problem, index) => problemText(problem, index + 1)),
  ].join('\n\n');
}

function problemText({ spans, severity, words }: Problem, number: number): string {
  const mark = `  ${number}. `;
  const indent = ' '.repeat(mark.length);
  const lead = severity === 'note' ? 'Better, if you can' : 'What to send instead';
  return [
    wrapText(spansText(spans), mark, indent),
    wrapText(words.problem, indent, indent),
    wrapText(`${lead}: ${words.instead}`, indent, indent),
  ].join('\n');
}

function failureText(failure: Failure): string {
  const { problem, instead } = clientFailure(failure);
  // The folders are the house's own.
  const name = failure.path.split(/[\\/]/).findLast((part) => part !== '') ?? failure.path;
  return [
    heading(safeText(name), '-'),
    wrapText(problem, '', ''),
    ...(instead === null ? [] : [wrapText(`What to send instead: ${instead}`, '', '')]),
  ].join('\n\n');
}

function heading(text: string, rule: string): string {
  return `${text}\n${rule.repeat(Math.min(text.length, 80))}`;
}
