/** What a page of A4 holds between its margins, CSS pixels. */
const PAPER_WIDTH = 700;

/** Whether the page is on its way to the printer. */
export function isPrinting(document: Document): boolean {
  return document.documentElement.hasAttribute('data-printing');
}

/**
 * How wide something will be on paper. Before the printer lays the page out, only its width on the
 * screen can be measured; its share of the page is taken to stay the same.
 */
export function paperWidth(document: Document, screenWidth: number): number {
  const share = screenWidth / document.body.clientWidth;
  return Math.round(PAPER_WIDTH * Math.min(1, share));
}
