/** What a page of A4 holds between its margins, CSS pixels; a picture is not drawn wider for it. */
const PAPER_WIDTH = 700;

/** Whether the page is on its way to the printer. */
export function isPrinting(document: Document): boolean {
  return document.documentElement.hasAttribute('data-printing');
}

/** How wide to draw what is so wide at this moment, when the page is laid out for paper if it is. */
export function drawnWidth(document: Document, measured: number): number {
  return isPrinting(document) ? Math.min(measured, PAPER_WIDTH) : measured;
}
