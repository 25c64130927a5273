import { Argument, type Command } from 'commander';
import { SCHEMA_NAMES, type SchemaName } from '../report/schema-names.js';
import { DONE } from './exit-code.js';
import { HELP_EPILOGUE } from './help-epilogue.js';
import type { Run } from './run.js';

/** `furrow schema [name]`: the JSON Schema of what furrow writes or reads. */
export function addSchema(program: Command, { output, done }: Run): void {
  program
    .command('schema')
    .description(
      'write a JSON Schema: of what --json and --ndjson write, a profile, a side sheet, or rules',
    )
    .addArgument(new Argument('[name]', 'which').choices(SCHEMA_NAMES).default('forecast'))
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (name: SchemaName) => {
      const { schemaText } = await import('../report/schema.js');
      await output.write(schemaText(name));
      done(DONE);
    });
}
