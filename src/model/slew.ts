/**
 * Opening ramps start early: row[n] ≥ row[n + 1] − step. Raises in place, never lowers.
 * @param step largest rise from one entry to the next
 */
export function openEarly(row: Float64Array, step: number): void {
  for (let at = row.length - 2; at >= 0; at--) {
    const ramp = row[at + 1]! - step;
    if (ramp > row[at]!) row[at] = ramp;
  }
}

/**
 * Closing ramps end late: row[n + 1] ≥ row[n] − step. Raises in place, never lowers.
 * @param step largest fall from one entry to the next
 */
export function closeLate(row: Float64Array, step: number): void {
  for (let at = 1; at < row.length; at++) {
    const ramp = row[at - 1]! - step;
    if (ramp > row[at]!) row[at] = ramp;
  }
}

/**
 * Eases an upper bound, so that what stays under it can keep the slews: it closes early before a
 * dip and opens late after it. Lowers in place, never raises.
 */
export function easeCap(row: Float64Array, openStep: number, closeStep: number): void {
  for (let at = row.length - 2; at >= 0; at--) {
    const ramp = row[at + 1]! + closeStep;
    if (ramp < row[at]!) row[at] = ramp;
  }
  for (let at = 1; at < row.length; at++) {
    const ramp = row[at - 1]! + openStep;
    if (ramp < row[at]!) row[at] = ramp;
  }
}
