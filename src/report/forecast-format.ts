/** What a forecast as JSON says that it is; apart from its schema, which takes 3 ms to make. */
export const FORMAT = 'furrow.forecast/1';
