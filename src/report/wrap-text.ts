import { stripVTControlCharacters } from 'node:util';

/** Columns of a text whose reader has no width of his own, such as a pipe. */
const COLUMNS = 80;

/** Between a number and its unit no line is broken. */
const NO_BREAK = '\u00a0';
const BEFORE_UNIT = /(?<=[\d–]) (?=(?:µm|mm|mil|in|LPI|dB\w*|LUFS|k?Hz|%|rpm|s|m\/s²)(?!\w))/g;

/**
 * Text in lines of at most `columns`, broken at spaces, each line behind its indent. Colours take no
 * room. A word that is longer than a line, such as a file name, stands on a line of its own.
 */
export function wrapText(
  text: string,
  firstIndent: string,
  indent: string,
  columns = COLUMNS,
): string {
  const lines: string[] = [];
  let line = firstIndent;
  let isEmpty = true;
  for (const word of text.replace(BEFORE_UNIT, NO_BREAK).split(/ +/)) {
    if (!isEmpty && shownLength(line) + 1 + shownLength(word) > columns) {
      lines.push(line);
      line = indent;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line].join('\n').replaceAll(NO_BREAK, ' ');
}

function shownLength(text: string): number {
  return stripVTControlCharacters(text).length;
}
