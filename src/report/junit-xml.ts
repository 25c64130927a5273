import { safeText } from './safe-text.js';

/** What no XML document may hold, and safeText leaves as it is. */
const NONCHARACTERS = /[\ufffe\uffff]/g;
const MARKUP = /[&<>"']/g;

/**
 * A text as it may stand in a document, in an attribute or between tags: what marks up is written as
 * entities, what XML forbids or could act on a reader's terminal is shown as \u{…}. Line breaks
 * stay, and within an attribute are kept from becoming blanks by none being there.
 * Source: XML 1.0, fifth edition, 2.2 (characters) and 2.4 (markup).
 */
export function xmlText(text: string): string {
  return text
    .split('\n')
    .map((line) => safeText(line).replace(NONCHARACTERS, shown).replace(MARKUP, entity))
    .join('\n');
}

/** An element with its attributes; children are markup already, each on a line of its own. */
export function xmlElement(
  name: string,
  attributes: Readonly<Record<string, string>>,
  children: readonly string[],
): string {
  const given = Object.entries(attributes).map(([key, value]) => ` ${key}="${oneLine(value)}"`);
  const start = `<${name}${given.join('')}`;
  if (children.length === 0) return `${start}/>`;
  const isText = children.every((child) => !child.startsWith('<'));
  const inside = isText ? children.join('') : `\n${children.join('\n')}\n`;
  return `${start}>${inside}</${name}>`;
}

/** In an attribute a line break would be read as a blank. */
function oneLine(text: string): string {
  return xmlText(text.replaceAll('\n', '\\u{a}'));
}

function shown(character: string): string {
  return `\\u{${character.charCodeAt(0).toString(16)}}`;
}

function entity(character: string): string {
  return `&#${character.charCodeAt(0)};`;
}
