/** How large the three views of a hot spot are, CSS pixels. */
export interface ViewSizes {
  readonly closeWidth: number;
  readonly closeHeight: number;
  readonly sectionWidth: number;
  readonly stripWidth: number;
  readonly stripHeight: number;
  /** One below the other. */
  readonly isStacked: boolean;
}

/** Under it two views side by side would be too small. */
const NARROW = 720;
/** As in the style sheet. */
const GAP = 20;
const PAPER_GAP = 10;

/** On paper all three side by side and low, or five hot spots would fill pages. */
export function viewSizes(width: number, isOnPaper: boolean): ViewSizes {
  if (isOnPaper) {
    const share = (part: number) => Math.floor(((width - 2 * PAPER_GAP) * part) / 8.6);
    return {
      closeWidth: share(3),
      closeHeight: 84,
      sectionWidth: share(2.6),
      stripWidth: share(3),
      stripHeight: 84,
      isStacked: false,
    };
  }
  const isStacked = width < NARROW;
  const half = isStacked ? width : Math.floor((width - GAP) / 2);
  return {
    closeWidth: half,
    closeHeight: 240,
    sectionWidth: half,
    stripWidth: width,
    stripHeight: 120,
    isStacked,
  };
}
