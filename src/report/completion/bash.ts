import type { CommandTree, Expected, OptionNode, Place } from './command-tree.js';

/**
 * The completion for bash, from 3.2 on. Which names of files there are is left to the line editor,
 * which knows about spaces, quotes and ~: the script then replies nothing at all.
 * What is expected is kept as `file`, `folder`, `other` or `words a b c`, behind a ? where it may
 * be left out.
 */
export function bashScript({ name, options, commands }: CommandTree): string {
  const values = [
    ...valueCases('', options),
    ...commands.flatMap((command) => valueCases(command.name, command.options)),
  ];
  const places = commands.flatMap((command) => placeCases(command.name, command.places));
  const lists = [
    listCase('', options),
    ...commands.map((command) => listCase(command.name, command.options)),
  ];
  return `# To install: ${name} completion bash > ~/.${name}-completion.bash && echo 'source ~/.${name}-completion.bash' >> ~/.bashrc

# What the value of an option is, into expects; nothing for one without.
_${name}_value() {
  case "$1 $2" in
${values.join('\n')}
    *) expects= ;;
  esac
}

# What stands at a place behind a command, into expects.
_${name}_place() {
  case "$1 $2" in
${places.join('\n')}
    *) expects=other ;;
  esac
}

# The options of a command, into expects.
_${name}_options() {
  case "$1" in
${lists.join('\n')}
    *) expects=other ;;
  esac
}

_${name}_reply() {
  case "$1" in
    file) ;;
    folder) compopt +o default -o dirnames 2>/dev/null ;;
    'words '*)
      compopt +o default 2>/dev/null
      COMPREPLY=($(compgen -W "\${1#words }" -- "$word"))
      ;;
    *) compopt +o default 2>/dev/null ;;
  esac
}

_${name}() {
  local word=\${COMP_WORDS[COMP_CWORD]} before= command= places=0 closed= expects= i
  COMPREPLY=()
  # The shell takes --option=value for three words.
  [[ $word == = ]] && word=
  for ((i = 1; i < COMP_CWORD; i++)); do
    before=\${COMP_WORDS[i]}
    if [[ -n $expects ]]; then
      [[ $before == = ]] && continue
      if [[ $expects != \\?* || $before != -* ]]; then
        expects=
        continue
      fi
      expects=
    fi
    if [[ -z $closed && $before == -- ]]; then
      closed=1
    elif [[ -z $closed && $before == -* ]]; then
      _${name}_value "$command" "$before"
    elif [[ -z $command ]]; then
      command=$before
    else
      places=$((places + 1))
    fi
  done
  if [[ -n $expects && ! ($expects == \\?* && $word == -*) ]]; then
    expects=\${expects#\\?}
  elif [[ -z $closed && $word == -* ]]; then
    _${name}_options "$command"
  elif [[ -z $command ]]; then
    expects='words ${commands.map((command) => command.name).join(' ')}'
  else
    _${name}_place "$command" "$places"
  fi
  _${name}_reply "$expects"
}

complete -o default -F _${name} ${name}
`;
}

function valueCases(command: string, options: readonly OptionNode[]): string[] {
  return options.flatMap(({ flags, value }) => {
    if (value === null) return [];
    const patterns = flags.map((flag) => `'${command} ${flag}'`).join(' | ');
    return [caseLine(patterns, `${value.isOptional ? '?' : ''}${codeOf(value.expected)}`)];
  });
}

function placeCases(command: string, places: readonly Place[]): string[] {
  return places.map(({ expected, isRepeated }, at) =>
    caseLine(isRepeated ? `'${command} '*` : `'${command} ${at}'`, codeOf(expected)),
  );
}

function listCase(command: string, options: readonly OptionNode[]): string {
  const flags = options.flatMap((option) => option.flags);
  return caseLine(`'${command}'`, `words ${flags.join(' ')}`);
}

function caseLine(pattern: string, expects: string): string {
  return `    ${pattern}) expects='${expects}' ;;`;
}

function codeOf(expected: Expected): string {
  return expected.kind === 'choices' ? `words ${expected.choices.join(' ')}` : expected.kind;
}
