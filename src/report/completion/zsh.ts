import type { CommandNode, CommandTree, Expected, OptionNode, Place } from './command-tree.js';

/**
 * The completion for zsh, by its own _arguments. It works from a folder of $fpath, which is why the
 * first line is what it is, and when it is sourced.
 */
export function zshScript({ name, options, commands }: CommandTree): string {
  const list = commands.map(
    (command) => `        ${quoted(`${escaped(command.name)}:${command.description}`)}`,
  );
  return `#compdef ${name}
# To install, with compinit in ~/.zshrc: ${name} completion zsh > ~/.${name}-completion.zsh && echo 'source ~/.${name}-completion.zsh' >> ~/.zshrc

_${name}() {
  local state line curcontext=$curcontext
  local -a commands
  typeset -A opt_args
  _arguments -C -S ${specs(options, [])} \\
    '1:command:->command' \\
    '*::argument:->argument' && return
  case $state in
    command)
      commands=(
${list.join('\n')}
      )
      _describe command commands
      ;;
    argument)
      case $line[1] in
${commands.map(commandCase).join('\n')}
      esac
      ;;
  esac
}

if [[ $funcstack[1] == _${name} ]]; then
  _${name} "$@"
else
  compdef _${name} ${name}
fi
`;
}

function commandCase({ name, options, places }: CommandNode): string {
  return `        ${name}) _arguments -S ${specs(options, places)} ;;`;
}

function specs(options: readonly OptionNode[], places: readonly Place[]): string {
  return [...options.map(optionSpec), ...places.map(placeSpec)].join(' \\\n    ');
}

/** Such as \`'(-h --help)'{-h,--help}'[display help]'\`. */
function optionSpec({ flags, description, value }: OptionNode): string {
  const text = `[${escaped(description)}]${value === null ? '' : valueSpec(value)}`;
  const names = flags.map((flag) => (value === null ? flag : withValue(flag)));
  if (names.length === 1) return quoted(`${names[0]}${text}`);
  return `${quoted(`(${flags.join(' ')})`)}{${names.join(',')}}${quoted(text)}`;
}

/** The value may be a word of its own, or follow = or the letter. */
function withValue(flag: string): string {
  return flag.startsWith('--') ? `${flag}=` : `${flag}+`;
}

function valueSpec({ name, expected, isOptional }: NonNullable<OptionNode['value']>): string {
  return `${isOptional ? '::' : ':'}${escaped(name)}:${actionOf(expected)}`;
}

function placeSpec({ name, expected, isOptional, isRepeated }: Place, at: number): string {
  const place = isRepeated ? '*:' : `${at + 1}${isOptional ? '::' : ':'}`;
  return quoted(`${place}${escaped(name)}:${actionOf(expected)}`);
}

function actionOf(expected: Expected): string {
  switch (expected.kind) {
    case 'choices':
      return `(${expected.choices.join(' ')})`;
    case 'file':
      return '_files';
    case 'folder':
      return '_files -/';
    case 'other':
      // Shows the name of what is expected.
      return ' ';
  }
}

/** What would end a part of a spec. */
function escaped(text: string): string {
  return text.replaceAll(/[\\:[\]]/g, '\\$&');
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
