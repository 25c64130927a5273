import type { CommandNode, CommandTree, Expected, OptionNode, Place } from './command-tree.js';

/** The completion for fish, from 3.0 on: one line an option, a command or a place. */
export function fishScript({ name, options, commands }: CommandTree): string {
  const line = (condition: string, rest: string) => `complete -c ${name} -n '${condition}' ${rest}`;
  const none = `not __${name}_command >/dev/null`;
  const atProgram = [
    ...commands.map((command) =>
      line(none, `-a ${quoted(command.name)} -d ${quoted(command.description)}`),
    ),
    ...options.map((option) => line(none, optionText(option))),
  ];
  const atCommand = ({ name: command, options: own, places }: CommandNode) => [
    ...own.map((option) => line(`__${name}_is ${command}`, optionText(option))),
    ...own.flatMap(({ flags, value }) =>
      value?.isOptional
        ? [line(`__${name}_is ${command} behind ${flags.join(' ')}`, expectedText(value.expected))]
        : [],
    ),
    ...places.flatMap((place, at) => placeLine(line, `__${name}_is ${command}`, place, at)),
  ];
  return `# To install: ${name} completion fish > ~/.config/fish/completions/${name}.fish

# The words that are no options, in front of the cursor; fails without any.
function __${name}_command
    set -l words (commandline -opc)
    string match -v -- '-*' $words[2..-1]
end

# Whether a command is typed; with a number, and so many arguments; or behind one of its options.
function __${name}_is
    set -l words (__${name}_command)
    or return 1
    test "$words[1]" = "$argv[1]"
    or return 1
    switch "$argv[2]"
        case ''
            return 0
        case behind
            set -l typed (commandline -opc)
            contains -- $typed[-1] $argv[3..-1]
        case '*'
            test (count $words) -eq (math $argv[2] + 1)
    end
end

complete -c ${name} -f
${[...atProgram, ...commands.flatMap(atCommand)].join('\n')}
`;
}

type Line = (condition: string, rest: string) => string;

/** Files can follow anywhere; choices only where they belong. */
function placeLine(line: Line, condition: string, place: Place, at: number): string[] {
  const { expected, isRepeated } = place;
  if (expected.kind === 'other') return [];
  const isAnywhere = isRepeated || expected.kind !== 'choices';
  return [line(isAnywhere ? condition : `${condition} ${at}`, expectedText(expected))];
}

function optionText({ flags, description, value }: OptionNode): string {
  const names = flags.map((flag) => flag.replace(/^-(?!-)/, '-s ').replace(/^--/, '-l '));
  const wanted = value === null || value.isOptional ? '' : ` -r ${expectedText(value.expected)}`;
  return `${names.join(' ')}${wanted} -d ${quoted(description)}`;
}

function expectedText(expected: Expected): string {
  switch (expected.kind) {
    case 'choices':
      return `-f -a ${quoted(expected.choices.join(' '))}`;
    case 'file':
      return '-F';
    case 'folder':
      return `-f -a '(__fish_complete_directories)'`;
    case 'other':
      return '-f';
  }
}

function quoted(text: string): string {
  return `'${text.replaceAll(/['\\]/g, '\\$&')}'`;
}
