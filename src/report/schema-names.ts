/** The schemas that `furrow schema` publishes; apart from them, so that a name loads none. */
export const SCHEMA_NAMES = [
  'forecast',
  'ndjson',
  'profile',
  'accepted',
  'sheet',
  'fit',
  'intake',
  'intake-ndjson',
  'watch',
  'watched',
  'rules',
] as const;
export type SchemaName = (typeof SCHEMA_NAMES)[number];
