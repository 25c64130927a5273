import * as z from 'zod';
import { acceptedSchema } from '../accepted/accepted-schema.js';
import { rulesSchema } from '../intake/rules-schema.js';
import { watchLineSchema } from '../intake/watch/watch-event.js';
import { watchedSchema } from '../intake/watch/watched-schema.js';
import { profileFileSchema } from '../profile/profile-schema.js';
import { sheetSchema } from '../sheet/sheet-schema.js';
import { fitSchema } from './fit-schema.js';
import { forecastSchema, lineSchema } from './forecast-schema.js';
import { intakeLineSchema, intakeSchema } from './intake-schema.js';
import type { SchemaName } from './schema-names.js';

/**
 * The published JSON Schema of what furrow writes or reads.
 * Source: JSON Schema, draft 2020-12.
 */
export function schemaText(name: SchemaName): string {
  return `${JSON.stringify(z.toJSONSchema(schemaOf(name)), null, 2)}\n`;
}

function schemaOf(name: SchemaName): z.ZodType {
  switch (name) {
    case 'forecast':
      return forecastSchema;
    case 'ndjson':
      return lineSchema;
    case 'profile':
      return profileFileSchema;
    case 'accepted':
      return acceptedSchema;
    case 'sheet':
      return sheetSchema;
    case 'fit':
      return fitSchema;
    case 'intake':
      return intakeSchema;
    case 'intake-ndjson':
      return intakeLineSchema;
    case 'watch':
      return watchLineSchema;
    case 'watched':
      return watchedSchema;
    case 'rules':
      return rulesSchema;
  }
}
