/** Places' sentences: a place or position in a few words, and what was wrong with a site and what would be right. */
import type { PlaceRecord, Position, PositionProblem, SiteProblem } from './site-resolution.js';

/** "Calgary, Alberta, Canada", at most 100 characters; a region of the place's own name is left out ("Vienna, Austria"). */
export const placeLabel = (place: PlaceRecord): string => {
  const label = [place.name, place.district, place.region, place.country]
    .filter((part, i) => part !== '' && (i === 0 || part !== place.name))
    .join(', ');
  return label.length > 100 ? `${label.slice(0, 99).trimEnd()}…` : label;
};

/** A text that resolves to this place: "Springfield, Illinois, US". */
export const placeSpec = (place: PlaceRecord): string => {
  return [place.name.replaceAll(',', ' '), place.district, place.region, place.countryCode]
    .filter((part) => part !== '')
    .join(', ');
};

const degrees = (value: number, positive: string, negative: string): string => {
  const size = Math.abs(value);
  const digits = Math.max(2, (/\.(\d+)/.exec(String(Math.round(size * 1e4) / 1e4))?.[1] ?? '').length);
  return `${size.toFixed(digits)}° ${value < 0 ? negative : positive}`;
};

/** "51.05° N, 114.07° W", to four decimals at most. */
export const positionName = (position: Position): string => {
  return `${degrees(position.latitudeDeg, 'N', 'S')}, ${degrees(position.longitudeDeg, 'E', 'W')}`;
};

const EXAMPLE = 'latitude, then longitude, in degrees, north and east positive, for example 52.71,-1.64';

const positionMessage = ({ text, fault, value }: PositionProblem): string => {
  const number = value === null ? '' : String(value).replace('-', '−');
  switch (fault) {
    case 'maybe-swapped':
      return `Latitude ${number}° is beyond ±90°. Did you swap latitude and longitude? Give ${EXAMPLE}.`;
    case 'latitude-range':
      return `Latitude ${number}° is beyond ±90°. Give ${EXAMPLE}.`;
    case 'longitude-range':
      return `Longitude ${number}° is beyond ±180°. West is negative${
        value !== null && value > 180 && value <= 360
          ? `: write ${(value - 360)
              .toFixed(4)
              .replace(/\.?0+$/, '')
              .replace('-', '−')} for ${number}° east`
          : ''
      }. Give ${EXAMPLE}.`;
    case 'sixtieths-range':
      return `${number} is too large for minutes or seconds of arc: they go from 0 up to 60, for example 52°42′36″N 1°38′24″W.`;
    case 'same-axis':
      return `“${text}” gives the same direction twice. Give one latitude (N or S) and one longitude (E or W).`;
    case 'unreadable':
      return `Could not read “${text}” as a position. Give ${EXAMPLE}.`;
  }
};

const choices = (places: readonly PlaceRecord[], most: number): string => {
  const shown = [...new Set(places.map(placeSpec))].slice(0, most);
  const last = shown.pop() ?? '';
  return shown.length === 0 ? last : `${shown.join('; ')}; or ${last}`;
};

/** One or two sentences, ≤ 400 characters, that say what was wrong and what would be right. */
/** "norwich" as a name is written; what has capitals already stays as it is. */
const titled = (text: string): string =>
  text === text.toLowerCase() ? text.replace(/(?<![\p{L}'’])\p{L}/gu, (letter) => letter.toUpperCase()) : text;

export const siteProblemMessage = (problem: SiteProblem): string => {
  const message = (() => {
    switch (problem.problem) {
      case 'bad-position':
        return positionMessage(problem);
      case 'ambiguous-place':
        return `There is more than one ${titled(problem.text)}: ${choices(problem.candidates, 5)}. Which one? Add the region or country.`;
      case 'unknown-place':
        if (problem.reason === 'empty') return `Name a site: a place, a saved site, or ${EXAMPLE}.`;
        if (problem.reason === 'too-long') return `That is too long for a site. Give a place name, or ${EXAMPLE}.`;
        return problem.nearest.length > 0
          ? `Found no place “${problem.text}”. Did you mean ${choices(problem.nearest, 3)}? Or give ${EXAMPLE}.`
          : `Found no place “${problem.text}” among towns of 1,000 people or more. Give a larger place nearby, or ${EXAMPLE}.`;
    }
  })();
  return message.length > 400 ? `${message.slice(0, 399)}…` : message;
};
