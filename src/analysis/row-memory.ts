/** Somewhere for the rows of a measured program: so many bytes, all 0. */
export type RowMemory = (bytes: number) => ArrayBufferLike;

/** Memory that only this thread sees. */
export const ownMemory: RowMemory = (bytes) => new ArrayBuffer(bytes);

/** Memory that goes from thread to thread without being copied. */
export const sharedMemory: RowMemory = (bytes) => new SharedArrayBuffer(bytes);
