/** First bytes of a motion file. The first is no letter and the last a line break. */
export const MAGIC = Uint8Array.of(0xfb, 0x66, 0x75, 0x72, 0x72, 0x6f, 0x77, 0x0a);
/**
 * The one version that is read. A change of the layout or of what a column means takes the next.
 * 1: without digital silence, jumps and the longest clipped run.
 */
export const VERSION = 2;

/** Bytes from the start of the file. */
export const VERSION_AT = 8;
export const HEAD_BYTES_AT = 12;
export const DIGEST_AT = 16;
/** Of a SHA-256. */
export const DIGEST_BYTES = 32;
export const HEAD_AT = DIGEST_AT + DIGEST_BYTES;

/** More than a head of all columns and the longest name takes. */
export const MOST_HEAD_BYTES = 2 ** 16;
/** 12 hours at 45 rpm, 182 MB of columns: more than any side, and not more than memory holds. */
export const MOST_QUARTERS = 2 ** 17;
/** More than so many quarters take, even where nothing could be packed. */
export const MOST_FILE_BYTES = 2 ** 28;

/** Extension of motion files, with its dot. */
export const MOTION_EXTENSION = '.motion';
