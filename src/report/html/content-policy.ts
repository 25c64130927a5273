import { createHash } from 'node:crypto';

/**
 * What a page may do: run and be styled by exactly these texts, and nothing else; it loads nothing
 * and sends nothing anywhere.
 * Source: W3C Content Security Policy Level 3, hash sources.
 */
export function contentPolicy(scripts: readonly string[], styles: readonly string[]): string {
  return [
    "default-src 'none'",
    `script-src ${hashes(scripts)}`,
    `style-src ${hashes(styles)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

function hashes(texts: readonly string[]): string {
  if (texts.length === 0) return "'none'";
  return texts
    .map((text) => `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`)
    .join(' ');
}
