/** The international inch (International yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4;
