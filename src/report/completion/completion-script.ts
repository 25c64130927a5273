import { bashScript } from './bash.js';
import type { CommandTree, Shell } from './command-tree.js';
import { fishScript } from './fish.js';
import { zshScript } from './zsh.js';

/** A script that makes a shell complete what can be typed. */
export function completionScript(shell: Shell, tree: CommandTree): string {
  switch (shell) {
    case 'bash':
      return bashScript(tree);
    case 'zsh':
      return zshScript(tree);
    case 'fish':
      return fishScript(tree);
  }
}
