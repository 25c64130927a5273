/** What can be typed, apart from any shell and any parser. */

export const SHELLS = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof SHELLS)[number];

/** What stands in one place of the command line; `other` cannot be completed. */
export type Expected =
  | { readonly kind: 'choices'; readonly choices: readonly string[] }
  | { readonly kind: 'file' | 'folder' | 'other' };

export interface OptionNode {
  /** With their dashes, such as -h and --help. */
  readonly flags: readonly string[];
  readonly description: string;
  /** null for an option without a value. */
  readonly value: OptionValue | null;
}

export interface OptionValue {
  readonly name: string;
  readonly expected: Expected;
  /** The option may stand without it. */
  readonly isOptional: boolean;
}

/** An argument that is no option. */
export interface Place {
  readonly name: string;
  readonly expected: Expected;
  readonly isOptional: boolean;
  /** Any number of them may follow. */
  readonly isRepeated: boolean;
}

export interface CommandNode {
  readonly name: string;
  readonly description: string;
  readonly options: readonly OptionNode[];
  readonly places: readonly Place[];
}

/** A program whose commands have no commands of their own. */
export interface CommandTree {
  readonly name: string;
  readonly options: readonly OptionNode[];
  readonly commands: readonly CommandNode[];
}
