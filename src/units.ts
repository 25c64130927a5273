/** Aliases of number that name the SI unit a value is in; the model and the analysis use no other. */
export type Metres = number;
export type MetresPerSecond = number;
export type MetresPerSecondSquared = number;
export type Seconds = number;
export type Hertz = number;
/** Pitch of the spiral, metres of radius per turn. */
export type MetresPerTurn = number;

/** Metres in a micrometre. */
export const MICROMETRE: Metres = 1e-6;
/** Metres in a millimetre. */
export const MILLIMETRE: Metres = 1e-3;
/** Metres in an inch. Source: international yard and pound agreement (exact). */
export const INCH: Metres = 0.0254;
/** Metres in a mil, a thousandth of an inch. */
export const MIL: Metres = INCH / 1000;
