import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The folder that holds the documents, its name ending in a slash. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

export const README = readDocument('README.md');
export const DEVELOPERS = readDocument('DEVELOPERS.md');
export const SECURITY = readDocument('SECURITY.md');

function readDocument(name: string): string {
  return readFileSync(`${ROOT}${name}`, 'utf8');
}

/** The contents of the fenced blocks of a language, in order. */
export function blocks(document: string, language: string): string[] {
  const fence = new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\`$`, 'gms');
  return [...document.matchAll(fence)].map(([, content]) => content ?? '');
}

/** A document without its fenced blocks. */
export function prose(document: string): string {
  return document.replaceAll(/^```.*?^```$/gms, '');
}

/** The cells of every row of every table, trimmed; the lines under the heads are left out. */
export function tableRows(document: string): string[][] {
  const lines = prose(document).match(/^\|.*\|$/gm) ?? [];
  return lines
    .map((line) => line.slice(1, -1).split('|'))
    .map((cells) => cells.map((cell) => cell.trim()))
    .filter(([first]) => first === undefined || !/^-+$/.test(first));
}

/** What stands between backticks outside of fenced blocks. */
export function codeSpans(document: string): string[] {
  return [...prose(document).matchAll(/`([^`\n]+)`/g)].map(([, span]) => span ?? '');
}

/** Headings with their level: `### `lift`` is [3, '`lift`']. */
export function headings(document: string): (readonly [level: number, text: string])[] {
  const lines = prose(document).matchAll(/^(#+) (.+)$/gm);
  return [...lines].map(([, marks, text]) => [marks?.length ?? 0, text ?? ''] as const);
}
