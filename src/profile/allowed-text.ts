import type * as z from 'zod';
import { profileSchema } from './profile-schema.js';

/**
 * What a field of a profile may hold, in the words with which anything else is refused:
 * `a number from 10 to 100`, `one of 12, 10, 7`, with `, or null` where that is allowed.
 * @param field as in the guide: a field of `machine` has a point in its name
 */
export function allowedText(field: string): string {
  const schema = schemaOf(field);
  // No field may be undefined, so that this is what each says of anything it does not allow.
  const issue = schema?.safeParse(undefined).error?.issues[0];
  if (schema === undefined || issue === undefined) throw new Error(`${field}: is no field`);
  const text = issue.message.replace(/^expected /, '');
  return schema.safeParse(null).success ? `${text}, or null` : text;
}

function schemaOf(field: string): z.ZodType | undefined {
  const fields: Readonly<Record<string, z.ZodType>> = profileSchema.shape;
  const inMachine: Readonly<Record<string, z.ZodType>> = profileSchema.shape.machine.shape;
  const [name = '', inside] = field.split('.');
  return inside === undefined ? fields[name] : inMachine[inside];
}
