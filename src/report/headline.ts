/** What a finding says first, up to its colon, as a sentence. */
export function headline(what: string): string {
  const [first = ''] = what.split(': ', 1);
  return first.endsWith('.') ? first : `${first}.`;
}
