import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { runFurrow } from './run-furrow.js';

const known = new Map<string, Promise<ValidateFunction>>();

/** Whether a value keeps to what `furrow schema NAME` writes; what is wrong is thrown. */
export async function isValid(name: string, value: unknown): Promise<true> {
  const compiled = known.get(name) ?? compile(name);
  known.set(name, compiled);
  const validate = await compiled;
  if (!validate(value)) throw new Error(JSON.stringify(validate.errors));
  return true;
}

async function compile(name: string): Promise<ValidateFunction> {
  const schema: unknown = JSON.parse((await runFurrow(['schema', name])).stdout);
  if (typeof schema !== 'object' || schema === null) throw new Error(`no schema ${name}`);
  return new Ajv2020({ allowUnionTypes: true }).compile(schema);
}
