/** "from 40 S": a latitude and no longitude is no place, and is never dropped: the answer asks for the other. */
import { problem } from '../../../ground/problem.js';
import { type Rule } from './asked.js';

const NUMBER = '\\d{1,2}(?:\\.\\d+)? ?(?:°|deg(?:rees)?)?';
const LATITUDE = new RegExp(
  `(?:^(?:site )?|\\b(?:from|lat(?:itude)?(?: of)?) )(${NUMBER}) ?(n|s|north|south)$|\\b(?:from|at|lat(?:itude)?) (${NUMBER}) ?(north|south)\\b(?! (?:of|by)\\b)|\\bfrom (${NUMBER}) ?(n|s)\\b`,
  'u',
);
/** Where a tube went or a star drifts, degrees are no place. */
const OF_SKY = /\b(?:land\w*|sent|off|drift\w*|altitude|declination|dec|high)\b/u;
const GREATEST_DEG = 90;

export const latitudeAlone: Rule = ({ plain, place }) => {
  const [size = '', way = ''] = (LATITUDE.exec(plain) ?? []).slice(1).filter((part) => part !== undefined);
  if (place !== null || way === '' || OF_SKY.test(plain)) return null;
  const deg = parseFloat(size);
  if (deg > GREATEST_DEG) return null;
  const latitude = way.startsWith('s') ? -deg : deg;
  const longitude = way.startsWith('s') ? '170.5' : '0.12';
  return problem(
    'which-longitude',
    `${deg}° ${way.startsWith('s') ? 'south' : 'north'} is a latitude; which longitude? Give both, north and east positive: tonight site:${latitude},${longitude}, or the name of a town.`,
  );
};
