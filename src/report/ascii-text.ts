/** The signs beyond ASCII that furrow's own words use, each one character wide as before. */
const SIGNS: Readonly<Record<string, string>> = { µ: 'u', '–': '-', '²': '2', '±': ' ' };

/** A text of furrow's in ASCII. What it does not know, such as letters of a name, stays. */
export function asciiText(text: string): string {
  // In a table ± must not take more room than it did; in a sentence it may.
  return text.replace(/(?<= to |, )±/g, '+/-').replace(/[µ±–²]/g, (sign) => SIGNS[sign] ?? sign);
}
