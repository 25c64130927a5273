/** Detail of what leaves too little for a turn of lead-out. */
export const LEAD_OUT_ROOM = 'lead-out-room';
/** Detail of a side that would be too long without any modulation: no level mends it. */
export const BASE_PITCH = 'base-pitch';
