// To be imported late: a start takes 2 ms to load it, in each thread, and few runs hash anything.
export { createHash } from 'node:crypto';
