import type { Argument, Command, Option } from 'commander';
import type {
  CommandNode,
  CommandTree,
  Expected,
  OptionNode,
  Place,
} from '../report/completion/command-tree.js';

/** Names of values that are files or folders, as they stand between < and > in the help. */
const FOLDER = /\b(?:dir|directory|folder)\b/i;
const FILE = /\b(?:files?|paths?|sheets?|wav|csv|html|json)\b/i;

/** What the parser would take, as data. Hidden commands and options stay hidden. */
export function commandTree(program: Command): CommandTree {
  const commands = program.createHelp().visibleCommands(program);
  const names = commands.map((command) => command.name()).filter((name) => name !== 'help');
  return {
    name: program.name(),
    options: optionsOf(program),
    commands: commands.map((command) => commandNode(command, names)),
  };
}

function commandNode(command: Command, names: readonly string[]): CommandNode {
  const isHelp = command.name() === 'help';
  return {
    name: command.name(),
    description: firstSentence(command.description()),
    options: optionsOf(command),
    // The parser itself lists no choices for the command that help is asked for.
    places: command.registeredArguments.map((argument) => placeOf(argument, isHelp ? names : null)),
  };
}

function optionsOf(command: Command): OptionNode[] {
  return command.createHelp().visibleOptions(command).map(optionNode);
}

function optionNode(option: Option): OptionNode {
  const { short, long, description, flags } = option;
  const name = /[<[]([^>\]]+)[>\]]/.exec(flags)?.[1]?.replace('...', '');
  return {
    flags: [short, long].filter((flag) => flag !== undefined),
    description: firstSentence(description),
    value:
      name === undefined
        ? null
        : { name, expected: expectedOf(name, option.argChoices), isOptional: option.optional },
  };
}

function placeOf(argument: Argument, names: readonly string[] | null): Place {
  const expected = expectedOf(argument.name(), names ?? argument.argChoices);
  return {
    name: argument.name(),
    // What furrow works on is files, whatever it calls them.
    expected: expected.kind === 'other' ? { kind: 'file' } : expected,
    isOptional: !argument.required,
    isRepeated: argument.variadic,
  };
}

function expectedOf(name: string, choices: readonly string[] | undefined): Expected {
  if (choices !== undefined) return { kind: 'choices', choices };
  if (FOLDER.test(name)) return { kind: 'folder' };
  return { kind: FILE.test(name) ? 'file' : 'other' };
}

/** On one line, and short: a shell shows it behind the word. */
function firstSentence(text: string): string {
  return text.split(/[;\n]|\. /)[0]?.trim() ?? '';
}
