/** Steps of a turn: fine enough that a circle is seen. */
const STEPS = 60;

/**
 * A spiral from one radius to another, in the units they are in, about the centre 0, 0: a disc that
 * turns clockwise under the cutter takes the groove counterclockwise, y pointing down.
 * @param pitch radius a turn, > 0
 */
export function spiralPoints(from: number, to: number, pitch: number): [number, number][] {
  const turns = Math.max(0, (from - to) / pitch);
  const count = Math.ceil(turns * STEPS);
  return Array.from({ length: count + 1 }, (_, step) => {
    const turn = count === 0 ? 0 : (step / count) * turns;
    const angle = -2 * Math.PI * turn;
    const radius = from - pitch * turn;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}
