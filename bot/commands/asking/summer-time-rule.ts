/** What is true of summer time wherever one stands, as asked before a place is known. */
export const SUMMER_TIME_RULE =
  'Summer time (daylight saving) is yes only while your own clocks stand an hour ahead of winter: in Europe from the last Sunday of March to the last of October. Otherwise it is no.';
