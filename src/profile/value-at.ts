/** What lies at a path of keys in a value; undefined where there is nothing. */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (at, key) =>
      typeof at === 'object' && at !== null
        ? Object.entries(at).find(([name]) => name === String(key))?.[1]
        : undefined,
    value,
  );
}
