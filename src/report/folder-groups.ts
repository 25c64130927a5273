/** Places of equal texts, group by group, in the order in which each text comes first. */
export function placesByText(
  texts: readonly string[],
  places: readonly number[] = [...texts.keys()],
): number[][] {
  const groups = new Map<string, number[]>();
  for (const place of places) {
    const text = texts[place] ?? '';
    const group = groups.get(text);
    if (group === undefined) groups.set(text, [place]);
    else group.push(place);
  }
  return [...groups.values()];
}
