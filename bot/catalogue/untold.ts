/** What Pierhand does not follow, said honestly in one place. */

/** For questions about satellites of Earth. */
export const NO_SATELLITES =
  'Satellites are not followed here: their orbits change by the day and this bot does not fetch them. Use a pass predictor for your place.';

/** For a comet or minor planet where the operator set no list. */
export const NO_ELEMENTS =
  'Comets and minor planets need a list of orbital elements. Whoever runs this bot can set PIERHAND_ELEMENTS to one of the Minor Planet Center’s (a file or a web address). Until then give J2000 coordinates for the hour.';
