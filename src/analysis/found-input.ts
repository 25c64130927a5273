import type { InputError } from '../errors.js';

/** What an argument leads to. Paths are as given, or below what was given; never made absolute. */
export type FoundInput =
  | { readonly kind: 'file'; readonly path: string }
  /** A folder without any file of sound or saved motion in it. */
  | { readonly kind: 'empty-folder'; readonly path: string }
  /** Something that is not there, or a folder that cannot be read; the rest goes on. */
  | { readonly kind: 'failure'; readonly error: InputError };
