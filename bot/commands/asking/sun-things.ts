/** "Sun cream", "sun hat", "my sun sign": what bears the Sun's name and is not the Sun. Pure. */

const THINGS =
  /\bsun[- ](creams?|lotions?|blocks?|oil|hats?|caps?(?= on)|beds?|tans?|tanned|lounger\w*|umbrellas?|parasols?|dress\w*|roofs?|dried|flowers?|burn\w*|rooms?|porch|deck|visors?|protection cream)\b/giu;
const SCREEN = /\bsun[- ]screen\b(?!.*\b(?:project\w*|paper|card|filter\w*|look\w*|image)\b)/giu;
const SIGN = /\b(sun|moon)[- ]sign(s?)\b/giu;
const NEWSPAPER = /\bin the sun newspaper\b|\bthe sun newspaper\b/giu;
/** What is to be reminded of keeps its words, and so do options. */
const KEEPS_WORDS = /\bremind\b|\s[a-z]{2,12}:\S/iu;

/** The line with these in one word, in which nobody finds the Sun. */
export const withSunThings = (line: string): string =>
  KEEPS_WORDS.test(line)
    ? line
    : line
        .replace(NEWSPAPER, 'in the newspaper')
        .replace(THINGS, (_, thing: string) => `sun${thing}`)
        .replace(SCREEN, 'sunscreen')
        .replace(SIGN, 'star sign$2');
