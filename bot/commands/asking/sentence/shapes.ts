/** "The W shaped one", "three stars in a row": shapes in the sky that newcomers ask about, by what they are. Common practice, no source. */
import { nightLine, says, type Rule } from './asked.js';

const SHAPES: readonly (readonly [RegExp, string])[] = [
  [
    /\b(?:fuzzy|misty|hazy|faint|cloudy|smudg\w*|blur\w*|patch\w*)\b.*\b(?:near|by|under|below|next to|beside|between|close to)\b.*\b(?:the (?:big )?w|cassiopeia)\b/u,
    'C14',
  ],
  [
    /\b(?:w|m)[ -]?shaped?\b|\bthe (?:big )?w\b(?! ?\/)(?=(?: (?:in|of|shape|stars?|constellation)\b|\W*$))|\b(?:like|shape of) an? "?(?:w|m)"?\b|\bzig ?zag\b/u,
    'Cassiopeia',
  ],
  [/\b(?:three|3) (?:bright )?stars? (?:in (?:a )?(?:row|line)|in line|lined up)\b/u, "Orion's Belt"],
  [/\b(?:saucepan|frying pan|ladle|big spoon|shopping (?:cart|trolley))\b/u, 'Big Dipper'],
  [/\b(?:backwards?|reversed?|sideways|upside[ -]?down|inverted|mirrored) question mark\b/u, 'Leo'],
  [/\b(?:big|great|large|huge) square\b/u, 'Great Square of Pegasus'],
  [
    /\b(?:tiny|little|small|mini) (?:dipper|saucepan|ladle)\b|\b(?:smudge|bunch|group|cluster) of (?:6|six|7|seven|small|tiny|blue) stars\b/u,
    'M45',
  ],
  [/\bteapot\b/u, 'Sagittarius'],
  [/\bkite\b/u, 'Bootes'],
  [/\bwinter\b.*\btriangle\b|\btriangle\b.*\bwinter\b/u, 'Winter Triangle'],
  [
    /\b(?:big |large |huge |bright )triangle\b|\btriangle of (?:three |bright )*stars\b|\bstars?\b.*\b(?:making|forming|make|form|like|in) an? (?:big |large |huge )?triangle\b/u,
    'Summer Triangle',
  ],
  [
    /\b(?:two|2) (?:little |small |big |large )?(?:fuzzy|faint|hazy|cloudy|misty|glowing|white) (?:patches|clouds?|blobs|spots|smudges|things)\b/u,
    'LMC',
  ],
];
const ASKS =
  /\b(?:what|what's|whats|which|wat|name|called|constellation|is that|where\w*|when|how|find|see)\b|\bstars?\b/u;

export const shapeSeen: Rule = (asked) => {
  if (asked.targets.length > 0 || !says(asked, ASKS)) return null;
  // "W" is short for "with" elsewhere.
  const original = asked.original.toLowerCase();
  const target = SHAPES.find(([pattern]) => pattern.test(original) || says(asked, pattern))?.[1];
  return target === undefined
    ? null
    : { ...nightLine('up', target, asked), note: 'By the shape you told.', usesAll: true };
};
