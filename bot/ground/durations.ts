/** Lengths of time in milliseconds, written once. */
export const MS_PER_SECOND = 1000;
export const MS_PER_MINUTE = 60 * MS_PER_SECOND;
export const MS_PER_HOUR = 60 * MS_PER_MINUTE;
/** A civil day without a change of clocks, and a UTC day without its leap second. */
export const MS_PER_DAY = 24 * MS_PER_HOUR;
/** A Julian year. */
export const MS_PER_YEAR = 365.25 * MS_PER_DAY;
