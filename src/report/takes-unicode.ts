/**
 * Whether what is written may hold more than ASCII: the first of LC_ALL, LC_CTYPE and LANG that is
 * set and not empty names UTF-8, and TERM is none that draws little else (`linux`, the console, has
 * no Braille; `dumb` promises nothing). None of the three set is the C locale, which is ASCII; but
 * on Windows, which has none of them, Node writes Unicode to the console.
 * Source: order of the variables: POSIX.1-2017, Base Definitions, 8.2; OS=Windows_NT: from memory.
 */
export function takesUnicode(environment: Readonly<Record<string, string | undefined>>): boolean {
  const { LC_ALL, LC_CTYPE, LANG, TERM, OS } = environment;
  if (TERM === 'linux' || TERM === 'dumb') return false;
  const locale = [LC_ALL, LC_CTYPE, LANG].find((each) => each !== undefined && each !== '');
  if (locale === undefined) return OS === 'Windows_NT';
  return /utf-?8/i.test(locale);
}
