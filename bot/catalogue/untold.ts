/** What Pierhand does not follow, said honestly in one place. */

/** For questions about satellites of Earth. */
export const NO_SATELLITES =
  'Satellites are not followed here: their orbits change by the day and this bot does not fetch them. Use a pass predictor for your place.';

/** For a comet or minor planet where the operator set no list. */
export const NO_ELEMENTS =
  'I have no list of comets and minor planets, whose places change from night to night. Ask whoever runs this bot to give me one; until then give J2000 coordinates for the hour.';
