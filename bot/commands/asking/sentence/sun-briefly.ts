/** What follows a warning of the Sun in the same talk: its own point in short, as the whole was read a moment ago. Pure. */
import { cautionText } from '../../../cautions/cautions.js';
import { CAMERA } from './sun-harm.js';

/** Warnings of looking in general: said once, the point is enough. All others have a matter of their own, the way to do it too, and stay whole. */
const GENERAL = ['sun-looking', 'sun-camera', 'sun-glasses'] as const;

const OWN_FILTER =
  /\b(?:with|got|have|ve|has|use|using|through|ll use) (?:on )?(?:my|the|a|an|our|his|her|its) (?:proper |full aperture |full |front |solar |sun |certified )*(?:solar|sun|front|full aperture|certified)? ?filter\b(?! (?:at|in|on) the (?:eye|back|rear))/u;
const NO_SUCH_FILTER =
  /\b(?:no|without|moon|nd\d*|polari\w*|uv|ir|green|red|blue|yellow|orange|lunar|eyepiece|home ?made|diy|cheap|broken|don t|dont|not|lost|forgot)\b/u;
const LOW =
  /\b(?:sun ?sets?|sun ?rise|low|lower|dusk|dawn|red|orange|setting|evening|untergang|tramonto|ocaso|coucher|zonsondergang|zachod\w*|afternoon)\b/u;
const MOMENT =
  /\b(?:quick\w*|fast|seconds?|sec|moments?|brief\w*|blink|glance|glimpse|peek|short|once|tiny|kurz|attimo|secondo|segundo|instante?|seconde|moment\w*|chwil\w*|even)\b/u;
const HOUSEHOLD =
  /\b(?:smoked?|soot\w*|cds?|dvds?|floppy|x ?-?rays?|negatives?|foil|blanket|tint\w*|mylar|welding|welders?|polari\w*|nd\d*|(?:moon|lunar|green|red|blue|yellow|orange|dark|nd|uv|ir|colou?r|grey|gray|camera|nebula) ?-?filters?)\b/u;
const CHILD =
  /\b(?:kids?|child(?:ren)?|sons?|daughters?|boys?|girls?|grand\w+|(?:can|may|could|let|for|is|if) (?:he|she|they|him|her|them)|toddler|baby|pupils?|class|school|friends?|wife|husband|mum|mom|dad|visitors?|public)\b/u;

/** The first that fits; what is held before the lens stands before who looks, and when. */
const POINTS: readonly (readonly [RegExp, string])[] = [
  [
    /\b(?:sun ?glass\w*|shades|sonnenbrille\w*|zonnebril\w*|lunettes de soleil|gafas de sol|occhiali da sole|oculos de sol|okulary przeciw\w*)\b/u,
    'sun-still-sunglasses',
  ],
  [
    /\b(?:eclipse|solar) (?:glass\w*|specs|viewers?|goggles)\b|\b(?:eclipsbril\w*|finsternisbrille\w*)\b/u,
    'sun-still-glasses',
  ],
  [HOUSEHOLD, 'sun-still-stand-in'],
  [
    /\b(?:cloud\w*|haz[ey]\w*|mist\w*|fog\w*|smog|overcast|wolk\w*|bewolk\w*|bedeckt|nuvol\w*|nuage\w*|nub(?:e|es|lado)|nuve(?:m|ns)|chmur\w*|nebel|brouillard|niebla|nebbia)\b/u,
    'sun-still-cloud',
  ],
  [/\b(?:window\w*|fenster\w*|fenetre|ventana|finestra|janela|raam|okno)\b/u, 'sun-still-window'],
  [/\b(?:reflect\w*|mirror\w*|lake|puddle|pond|on (?:the )?water|spiegel\w*)\b/u, 'sun-still-mirror'],
  [/\b(?:finder\w*|sucher|buscador|cercatore|chercheur|zoeker)\b/u, 'sun-still-finder'],
  [
    /\b(?:bino\w*|bins|\d+ ?x ?\d{2}|fernglas\w*|feldstecher|prismaticos|jumelles|verrekijker\w*|lornet\w*)\b/u,
    'sun-still-binoculars',
  ],
  [CAMERA, 'sun-still-camera'],
  [/\b(?:squint\w*|(?:one|an) eye|half(?: |-)?(?:closed|shut)|eyes? (?:half|nearly|almost))\b/u, 'sun-still-squint'],
  [/\b(?:bare|naked|own|my|just|only) (?:my )?eyes?\b/u, 'sun-still-bare'],
  [
    /\b(?:nothing happened|did (?:it|that) (?:before|once|last|already)|all the time|always (?:do|does|did|look\w*)|everyone|everybody|many times|never had)\b/u,
    'sun-still-before',
  ],
  [MOMENT, 'sun-still-moment'],
  [LOW, 'sun-still-low'],
  [CHILD, 'sun-still-children'],
];

const WHY =
  /^(?:(?:but|and|ok|okay|so|hm+|oh|no) )*(?:why|why (?:not|so|is (?:that|it)|s that)|how come|what do you mean|(?:why )?is (?:it|that) (?:really )?(?:so|that) (?:bad|dangerous|risky)|what (?:happens|could happen|would happen|can happen)|warum(?: nicht)?|wieso|pourquoi(?: pas)?|perche(?: no)?|por ?que(?: no| nao)?|waarom(?: niet)?|dlaczego(?: nie)?)(?: (?:so|then|if i do(?: it)?|is it (?:so )?(?:dangerous|bad|unsafe)|exactly))*$/u;
/** "Why?", after a warning. */
export const asksWhySun = (plain: string): boolean => WHY.test(plain);

const WHOLE_ITSELF: readonly string[] = ['sun-still-yours'];
const withStill = (id: string): string =>
  WHOLE_ITSELF.includes(id) ? cautionText(id) : `${cautionText(id)} ${cautionText('sun-still')}`;

export const whyWords = (): string => withStill('sun-still-why');

/** What only a filter, and how one looks, can mean, though the rest of the words was not understood. */
const PLAINLY_OF_IT: readonly (string | null)[] = [
  'sun-still-yours',
  'sun-still-before',
  'sun-still-stand-in',
  'sun-still-squint',
  'sun-still-mirror',
  'sun-still-sunglasses',
  'sun-still-glasses',
];
/** For words that nothing understood; null where they may be of something else. */
export const sunPoint = (plain: string): string | null => {
  const point = pointOf(plain);
  const isSure = PLAINLY_OF_IT.includes(point) || plain.split(' ').length <= MOST_IN_SHORT;
  return point !== null && isSure ? withStill(point) : null;
};
/** In so few words after a warning nothing else is spoken of. */
const MOST_IN_SHORT = 5;

const pointOf = (plain: string): string | null => {
  if (OWN_FILTER.test(plain) && !NO_SUCH_FILTER.test(plain)) return 'sun-still-yours';
  return POINTS.find(([pattern]) => pattern.test(plain))?.[1] ?? null;
};

/**
 * @param plain folded, see plainHarm
 * @param message the warning in full
 * @returns the point alone; null where the warning has a matter of its own
 */
export const sunBriefly = (plain: string, message: string): string | null => {
  if (!GENERAL.some((id) => cautionText(id) === message)) return null;
  const point = pointOf(plain);
  return point === null ? `No: ${cautionText('sun-still').replace(/^O/u, 'o')}` : withStill(point);
};
