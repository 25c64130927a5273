/** Name of the file that lies beside the sides it speaks of. */
export const ACCEPTED_NAME = 'furrow.accepted.json';

/** Bytes; far above any list that was written by hand or by `furrow accept`. */
export const LARGEST_ACCEPTED = 10_000_000;
