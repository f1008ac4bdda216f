/** "My mate Bob can't connect his mount": an account of another's mount, whose words on what he has are said of the mount in hand. */
import { tableOf } from '../ground/table-of.js';
import { rememberLines } from './lately.js';

const KIN =
  'mate|friend|neighbou?r|buddy|pal|colleague|brother|sister|dad|father|mum|mother|son|daughter|uncle|cousin|wife|husband|club ?mate|member|chap|bloke|guy|lady|woman|fellow|visitor|newcomer|beginner|kid|boy|girl|lad';
/** What is no name. */
const NO_NAME =
  'the|an?|my|his|her|their|our|your|it|its|he|she|they|we|you|i|who|that|this|here|there|at|in|on|of|from|with|and|but|or|is|are|was|has|have|had|can|cant|cannot|could|does|doesnt|wont|will|would|says?|asks?|needs?|wants?|gets?|tries|lent|gave|bought|mount|scope|telescope|program|app|driver|handset|windows|mac|linux|laptop|computer|pc|help|about|over|via|using|some|any|new|old|other|another|today|tonight|now|just|not|never|mate|friend|usb|kid|boy|girl|lad';
const NAME = `(?<name>(?!(?:${NO_NAME})\\b)\\p{L}{2,15})`;
const GEAR =
  '(?:mount|scope|telescope|goto|rig|set-?up|handset|hand controller|controller|tracker|dob(?:sonian)?|equatorial)';
const AT_CLUB = '(?: (?:at|from|in|of) (?:the|our|my) (?:club|field|group|society))?';
const WHO = `(?:my|a|an|the|our|this|one of our) (?<kin>${KIN})(?: of mine)?${AT_CLUB}(?:,? (?:called |named )?${NAME})?`;
const WHO_ALONE = `(?:my |our |the )?(?<kin>${KIN}) ${NAME}`;
const POSSESSIVE = "(?:['\u2019]s|s)";
const FAILS =
  "(?:can ?not|can['\u2019]?t|could ?n['\u2019]?t|could not|does ?n['\u2019]?t (?:get|see|find|manage)|has (?:a |some )?(?:mount|trouble|problems?|issues?)|needs? help|wants? help|struggles?|is (?:stuck|struggling|trying|having)|gets? no|gets? an? error|sees no)";
const REPORTS = '(?:asks?|wants to know|says|writes|reports|tells me|complains)';
const HELPING =
  "(?:(?:i['\u2019]?m|i am|we are|we['\u2019]?re|im)? ?(?:helping|trying to help)|on behalf of|(?:asking|writing|this is|it is|its) for|for)";

/** What opens an account; further on another's mount is named beside one's own. */
const START =
  '^\\W*(?:(?:hi|hello|hey|so|and|now|ok(?:ay)?|please|sorry|evening|good evening|all|everyone|pierhand)[,.!]* )*';
const HIS = '(?:his|her|their)';
const starting = (form: string): RegExp => new RegExp(`${START}${form}`, 'iu');

const MACHINE = '(?:pc|laptop|computer|mac(?:book)?|notebook|desktop|tablet|phone)';
const DOES =
  "(?:says?|shows?|gets?|gives?|can ?not|can['\u2019]?t|does ?n['\u2019]?t|wo ?n['\u2019]?t|never|keeps?|finds?|sees?|refuses?|fails?|drops?|loses?|has no|is not|isn['\u2019]?t|just)";

const FORMS: readonly RegExp[] = [
  starting(`${WHO},?(?: here)? ${FAILS}\\b`),
  starting(`(?:on behalf of |for )?${WHO}${POSSESSIVE} ${GEAR}\\b`),
  starting(`${WHO_ALONE}(?: here)? ${FAILS}\\b`),
  starting(`${NAME}${AT_CLUB} ${FAILS}\\b(?=.*\\b(?:${HIS} ${GEAR}|he|she)\\b)`),
  starting(`${NAME}['\u2019]s ${GEAR}\\b`),
  starting(`${NAME} ${REPORTS} (?:\\w+ ){0,3}${HIS} ${GEAR}\\b`),
  starting(`${HELPING} ${WHO}\\b(?! (?:it|that|this) (?:was|is|works?))`),
  starting(`(?:(?:i['\u2019]?m|i am|im|we are) helping|helping|on behalf of|asking for|writing for) ${NAME}\\b`),
  starting(
    `(?:it is |it['\u2019]?s |its )?not my ${GEAR},? (?:but |it is |it['\u2019]?s |its )*(?:my (?<kin>${KIN})['\u2019]?s|${NAME}${POSSESSIVE})(?= *(?:[.,;:!]|$))`,
  ),
  // Of nobody named: the only machine that is told of.
  starting(`(?=${HIS} (?:\\w+ ){0,3}(?:${MACHINE}|${GEAR}) (?:\\w+ )?${DOES}\\b)`),
  starting(
    `(?:i am|i['\u2019]?m|im|we are|we['\u2019]?re) (?:at|with|round) (?:my (?<kin>${KIN})['\u2019]?s?|${NAME}${POSSESSIVE}) ?(?:place|house|home|garden|observatory)?, (?=${HIS} ${GEAR})`,
  ),
];
/** It does well, or did other things at another time: spoken of by the way. */
const BY_THE_WAY = new RegExp(
  `${GEAR} (?:\\w+ )?(?:works?|worked|has been|always|never|likes?|does ?n['\u2019]?t need|is (?:fine|ok|great|another|the same))\\b`,
  'iu',
);

/** One's own mount is in it, which the other's stands against. */
const OWN = new RegExp(
  `\\b(?:mine|ours|my (?:own )?(?:${GEAR}|laptop|pc|computer|mac(?:book)?|cable|lead|adapter|phone|tablet)|i (?:can|cannot|cant|can['\u2019]t|could|have|had|use|get|got|tried|bought|borrowed|connect))\\b`,
  'iu',
);
const NOT_MY_GEAR = new RegExp(`\\bnot my ${GEAR}`, 'giu');
const LONGEST = 300;

const capital = (name: string): string => `${name.charAt(0).toUpperCase()}${name.slice(1)}`;

export interface Another {
  /** "Bob", or "your neighbour" where no name is said. */
  readonly who: string;
}

const nameIn = ({ name = '', kin }: { readonly name?: string; readonly kin?: string }): string => {
  if (name !== '') return capital(name);
  return `your ${(kin ?? 'friend').toLowerCase()}`;
};

/** @returns null where the mount is one's own, or nothing says whose */
export const forAnother = (text: string): Another | null => {
  const said = text.trim().slice(0, LONGEST);
  const found = FORMS.map((form) => form.exec(said)).find((match) => match !== null);
  if (found === undefined) return null;
  const rest = said.replace(found[0], ' ').replace(NOT_MY_GEAR, ' ');
  return OWN.test(rest) || BY_THE_WAY.test(said) ? null : { who: nameIn(found.groups ?? {}) };
};

const escaped = (name: string): string => name.replace(/[^\p{L}\d ]/gu, '');

type InItsStead = readonly [form: RegExp, own: string];

/** What names the other, and what they would say in its stead: made once for each name. */
const namingForms = rememberLines((who): readonly InItsStead[] => {
  const name = who.startsWith('your ') ? '' : escaped(who);
  const named = name === '' ? '(?!)' : name;
  return [
    [
      new RegExp(
        `\\b(?:not my ${GEAR},? (?:but |it is |it['\u2019]?s |its )*)(?:my (?:${KIN})|${named})['\u2019]?s\\b`,
        'giu',
      ),
      'my mount',
    ],
    [
      new RegExp(
        `\\b(?:${HELPING} )?(?:my|an?|the|our|this) (?:${KIN})(?: of mine)?${AT_CLUB},?(?: (?:called |named )?${named}\\b)?['\u2019]s? `,
        'giu',
      ),
      'my ',
    ],
    [
      new RegExp(
        `\\b(?:my|an?|the|our|this) (?:${KIN})(?: of mine)?${AT_CLUB}(?:,? (?:called |named )?${named}\\b)?,?(?: here)?`,
        'giu',
      ),
      'I',
    ],
    [new RegExp(`\\b(?:${KIN}) ${named}\\b(?: here)?`, 'giu'), 'I'],
    [new RegExp(`\\b${named}['\u2019]?s (?=${GEAR})`, 'giu'), 'my '],
    [new RegExp(`\\b${named}\\b(?:['\u2019]s)?`, 'giu'), 'I'],
  ];
});

/** Said of the other without a name. */
const OTHER_FORMS: readonly InItsStead[] = [
  [
    /\b(?:i['\u2019]?m|i am|im|we are)? ?(?:helping|on behalf of|asking for|writing for|for) I\b(?: with)?[,:]?/giu,
    ' ',
  ],
  [/\b(?:his|her|their)\b/giu, 'my'],
  [/\b(?:he|she|they) (?:has|have)\b/giu, 'I have'],
  [/\b(?:he|she|they)\b/giu, 'I'],
];
const OF_ONESELF = tableOf({ goes: 'go', has: 'have', tries: 'try' });

/** The same words as if the other spoke: "I can't connect my mount". */
export const asIfOwn = (text: string, { who }: Another): string =>
  [...namingForms(who), ...OTHER_FORMS]
    .reduce((said, [form, own]) => said.replace(form, own), text)
    .replace(
      /\bI (goes|uses|gets|sees|connects|runs|tries|wants|needs|has)\b/gu,
      (_, verb: string) => `I ${OF_ONESELF.get(verb) ?? verb.replace(/s$/u, '')}`,
    );
