import { readFileSync } from 'node:fs';

/** Version of furrow, from the package's own description. */
export function furrowVersion(): string {
  const path = new URL('../package.json', import.meta.url);
  const content: unknown = JSON.parse(readFileSync(path, 'utf8'));
  const isObject = typeof content === 'object' && content !== null;
  return isObject && 'version' in content ? String(content.version) : 'unknown';
}
