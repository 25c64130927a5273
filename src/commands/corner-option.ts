import * as z from 'zod';

/** The corner of the elliptical filter on the command line; null for off. */
export const cornerOption = z
  .union([z.number(), z.literal('off').transform(() => null)])
  .optional();
