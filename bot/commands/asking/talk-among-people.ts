/**
 * Talk that people have beside their question: greetings, thanks, good-byes, "back in a minute", words for another member. Pure; each
 * clause has to be talk, so that "thanks, still nothing" is none.
 */
import { withoutFaces } from '../../ground/without-faces.js';

export type Talk = 'hello' | 'thanks' | 'farewell' | 'wait' | 'others';

const LONGEST = 200;

/** What tells of the mount, and is no name of a person thanked. */
const TELLING = 'no|not|nothing|none|nope|still|same|works?|working|worked|fixed|done|yes|it|that|this|but|is|was|did';
/** What goes on to a question: "evening, what's up". */
const ASKING = "what(?:'?s)?|wot(?:'?s)?|where(?:'?s)?|when(?:'?s)?|how(?:'?s)?|which";
const WHO = `(?: (?:so|to|you|all of you|every ?(?:one|body)|(?!(?:${TELLING}|${ASKING})\\b)[\\p{L}'.-]+)){0,4}`;
const DAY =
  '(?:later|soon|tomorrow|tonight|then|around|there|again|next (?:week|time|month|\\p{L}+day)|(?:on |this )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|in the morning)';
const PLACE = '(?:(?:at|in|down|over|out) (?:at )?(?:the|my|your|our) \\p{L}+)';
const PLEASANT =
  '(?:great|good|lovely|nice|brilliant|wonderful|super|fun|awesome|amazing|fantastic|cracking|excellent|perfect)';
const SHARED =
  '(?:evening|night|session|meeting|talk|job|work|stuff|time|fun|company|to see you|seeing you|one|weekend)';

const whole = (...forms: readonly string[]): RegExp => new RegExp(`^(?:${forms.join('|')})$`, 'u');

/** By kind, the kind that is answered where several are said standing first. */
const KINDS: readonly (readonly [Talk, RegExp])[] = [
  [
    'farewell',
    whole(
      `(?:bye|bye bye|goodbye|good ?night|nighty night|night night|night|cya|ttyl|ttfn|laters|cheerio|so long|take care)${WHO}(?: ${DAY})?`,
      `(?:i will |i'll |we will |we'll |hope to |looking forward to )?(?:see|seeing|catch|meet) (?:you|ya|u)(?: (?:all|both|guys|lot|every ?(?:one|body)|\\p{L}+))?(?: (?:${DAY}|${PLACE}))*`,
      `(?:talk|speak)(?: to you(?: all)?)? ${DAY}`,
      // "Later?" after an answer asks for a later hour.
      `later (?:all|everyone|every ?body|guys|folks|mates?|people|gang|dudes?|friends?|then all)`,
      `(?:until|till) ${DAY}`,
      `(?:gute nacht|buenas noches|bonne nuit|buona ?notte|boa noite|dobranoc|goede ?nacht|au revoir|arrivederci|adi[oó]s|tsch(?:ü|ue)ss|bis (?:bald|morgen))${WHO}`,
      `(?:(?:i am|i'm|im|we are|we're|were) )?(?:now |just )?(?:heading (?:home|off|to bed|in|back|out)|(?:going|off) (?:home|to bed|to sleep)|calling it a night|signing off|logging off|packing up|turning in)(?: (?:now|then|soon|everyone|all|for (?:now|tonight|today|the night)))*`,
      `(?:i am|i'm|im|we are|we're) off(?: (?:now|then|home|to bed))*`,
      `(?:i |we )?(?:'?ve )?(?:gotta|got to|have to|need to|must) (?:go|dash|run|leave)(?: (?:now|home|soon|to bed))*`,
      `(?:time for bed|bed ?time|sleep well|sweet dreams|safe (?:journey|trip|drive|travels)(?: home)?|clear skies|good luck)${WHO}(?: ${DAY})?`,
      `(?:have|enjoy) (?:a |an |the |your )?(?:${PLEASANT} )?(?:rest of the |rest of your )?${SHARED}${WHO}`,
    ),
  ],
  [
    'thanks',
    whole(
      `(?:many |big |huge |a thousand )?(?:thanks|thank you|thankyou|thx|ta|cheers|ty|much appreciated|appreciated)(?: (?:so much|very much|a lot|a million|a bunch|loads|again|anyway|indeed))*${WHO}(?: for (?:all |the |your |that|this|a |everything|coming|helping|help|advice|tips?|patience|time|being here|looking|explaining|great|lovely|nice|evening|night|session|tonight|answer|company|lift|listening|trying| )+)?`,
      `(?:muchas |mille |molte |vielen |tusen |mange |stort )?(?:gracias|danke|dank|merci|grazie|obrigad[oa]|dzi[eę]ki|dzi[eę]kuj[eę]|dank je|dank u|bedankt|takk|tack(?: s[aå] mycket)?|kiitos|d[eě]kuj[iu]|k[oö]sz[oö]n[oö]m|hvala|spasibo|diolch|go raibh maith ag(?:at|aibh)|arigatou?|mahalo|multumesc|efharisto)(?: (?:sch[oö]n|sehr|beaucoup|mille|bien|wel|muito|for (?:hjelpen|hj[aä]lpen)|yn fawr))?${WHO}`,
      `(?:tusen|mange) tak${WHO}`,
      `(?:you are|you're|youre|your|ur) (?:a |an |the |all )*(?:star|stars|legend|legends|hero|heroes|genius|best|great|lifesaver|welcome|brilliant|wonderful|too kind|very kind|kind)${WHO}`,
      // "Good evening" greets.
      `(?!good (?:evening|night)\\b)(?:(?:it|that) was |that's |what )?(?:a |an |such )*(?:really |very )?${PLEASANT} ${SHARED}${WHO}`,
      `(?:well done|congrats|congratulations|bravo)${WHO}`,
      `(?:and |a |very )*(?:happy|merry|joyous) (?:birthday|bday|new ?year|ny|christmas|chrimbo|crimbo|xmas|x-mas|easter|holidays|halloween|hannukah|hanukkah|chanukah|diwali|eid|solstice|yule|yuletide|festive season|thanksgiving|bonfire night)${WHO}`,
      `(?:season'?s greetings|compliments of the season|god jul|gl[aæ]delig jul|feliz (?:navidad|natal|a[nñ]o(?: nuevo)?)|joyeux no[eë]l|bonne ann[eé]e|fr(?:oh|öh)(?:e|liche) weihnachten|buon natale|vrolijk kerstfeest|eid mubarak|nadolig llawen)${WHO}`,
    ),
  ],
  [
    'wait',
    whole(
      `(?:(?:i will be |i'll be |will be )?(?:right )?back|brb|bbl|afk)(?: (?:soon|later|shortly|in (?:a|an|\\d{1,3}|one|two|five|ten|twenty|half an) ?(?:bit|mins?|minutes?|secs?|seconds?|mo|moment|tick|hours?)?))?`,
      `(?:(?:just|give me|gimme|wait|hang on|hold on|be with you in) )?(?:a|one|1|two|2|five|5|ten|10) (?:secs?|seconds?|mins?|minutes?|moments?|mo|ticks?|bit)`,
      `hang on|hold on|wait|bear with me`,
      `(?:let us |let's |lets |can we |could we |can you |i will |i'll )?(?:pause|(?:park|pause|hold|rest|shelve) (?:the|this|that|my|our) (?:walk|triage|thing|one|question)|pause (?:it|this|that|here)|put (?:it|this|that|the walk) on (?:hold|ice))(?: (?:here|for (?:now|tonight|today|a bit|a while)|until \\p{L}+|a bit|please))*`,
      `(?:oh |no |nah |sorry )*(?:not (?:right |just )?(?:now|today|tonight|at the moment|this (?:minute|evening))|(?:maybe |perhaps )?(?:an|some )other (?:time|day|night|evening)|(?:maybe |perhaps |a bit |rather )?later(?: on)?(?: maybe| perhaps)?)(?: (?:thanks|thank you|ta|though|mate|sorry))*`,
      `(?:my |the )?(?:dinner|tea|lunch|supper|food|kettle|coffee|pizza|phone|doorbell)(?:'s| is|s)? (?:ready|on|calling|here|served|ringing|boiling)`,
    ),
  ],
  [
    'hello',
    whole(
      `(?:hi|hello|hey|hiya|heya|yo|howdy|greetings|welcome|(?:good )?(?:morning|afternoon|evening))${WHO}`,
      `how (?:are|is|r) (?:you|u|ya|things|life|tricks|every ?(?:one|body)|we)(?: (?:all|doing|going|tonight|today|keeping))*`,
      `(?:how's|hows) (?:it going|it hanging|tricks|life|things|everything|every ?(?:one|body)|you)(?: (?:all|doing|tonight|today|mate))*`,
      `how (?:do you do|goes it|goes)|(?:are )?(?:you|u) (?:ok|alright|all right|well|good|there)(?: (?:mate|bot|pierhand))?|(?:alright|all right|ay ?up|wotcha)(?: (?:mate|all|there|pal|lads?))?`,
      `(?:nice|good|pleased|great) to (?:meet|see|hear from) (?:you|u)(?: (?:all|too|again))*`,
    ),
  ],
  [
    'others',
    whole(
      `(?:so )?(?:is |are )?(?:any ?(?:one|body)|who|who's|whos|you lot|you guys|you all)(?: else)?(?: is| are)? (?:coming|going|bringing|up for|free|fancy|fancies|joining|wants? a lift|needs? a lift)\\b[^|]{0,60}`,
      `(?:are we|we are|shall we|let us|let's|lets) (?:still )?meet(?:ing)?\\b[^|]{0,60}`,
      `(?:lol|lmao|rofl|ha(?:ha)+|hehe+|heh|xd|omg|wow|phew)${WHO}`,
    ),
  ],
];

/** Says nothing by itself, and stands beside each kind. */
const FILLER = /^(?:ok|okay|right|well|so|anyway|oh|ah|um|all right|alright|sure|fine|good|great|lovely|cool|sorry)$/u;
const LEADING =
  /^(?:(?:ok|okay|right|well|so|anyway|oh|ah|alright|and|then|great|lovely|perfect|brilliant|brill|nice(?: one)?|cool|sweet|ace|magic|sound|awesome|please|just) )+(?=\S)/u;

const TRAILING = /(?: (?:please|pls|now|then))+$/u;

/** "@Wilf can you bring the laptop?" */
const TO_ANOTHER = /^@(?!pier|(?:home|work|night|first|field|club|the)\b)[\p{L}\d][\p{L}\d._:-]*[\s,:]\s*\S/iu;

const clausesOf = (text: string): readonly string[] =>
  withoutFaces(text)
    .toLowerCase()
    .replace(/[’‘`]/gu, "'")
    .split(/[,.;:!?…|\n]+|\s[-–—]+\s|\s(?:and|but)\s/u)
    .map((clause) => clause.replace(/\s+/gu, ' ').trim())
    .filter((clause) => clause !== '');

const kindOf = (clause: string): Talk | null => {
  const bare = clause.replace(LEADING, '').replace(TRAILING, '');
  return KINDS.find(([, form]) => form.test(clause) || form.test(bare))?.[0] ?? null;
};

/** How one speaks to people rather than of a mount. */
const TO_PEOPLE =
  /^(?:(?:so|and|hey|hi|ok|oh|sorry|haha|lol|right|well|cool)[ ,]+)*(?:(?:(?:is|are|has|have|did|does|do|was) )?(?:any ?(?:one|body)|every ?(?:one|body))\b|who(?:'s|se)?\b(?! (?:are|r|made|is) (?:you|u|this|pierhand)\b)|you (?:all|lot|guys)\b|guys\b|folks\b|(?!(?:what|how|why|where|when|which|who)\b)\p{L}+,? (?:are|will|did|do|have|can|could) (?:you|u)\b|hope (?:you|every)|what an? (?!\p{L}+ (?:is|are)\b)|no worries|my (?:wife|husband|son|daughter|kids?|mum|dad|dog|cat)\b|(?:i (?:got|have|need|want) to|gotta) (?:put|feed|walk|fetch|collect|cook|make|go)\b)/iu;
/** What answers a question or tells of a remedy, however few words it is. */
const ANSWERS = /\b(?:no|not|nothing|none|never|still|same|yes|yep|nope|\p{L}+n't)\b/u;
/** After a greeting one often tells of the mount; after these seldom. */
const CLOSES: readonly (Talk | null)[] = ['farewell', 'thanks', 'wait'];

/** In so many phrases of the trade a word is of it: more for a sentence said to people, fewer for what stands beside a thanks. */
const OFTEN = { toPeople: 20, besideTalk: 3 } as const;

export interface TalkFound {
  readonly kind: Talk;
  /** It is talk only where these words do not tell of a mount; null: for certain. */
  readonly unless: { readonly words: string; readonly often: number } | null;
}

/** @returns null where it is none */
export const talkIn = (text: string): TalkFound | null => {
  const said = withMates(text.trim());
  if (said.length > LONGEST || /\n\s*\S/u.test(said)) return null;
  if (TO_ANOTHER.test(said)) return { kind: 'others', unless: null };
  const clauses = clausesOf(said)
    .filter((clause) => !FILLER.test(clause))
    .map((words) => ({ words, kind: kindOf(words) }));
  const kind = KINDS.map(([one]) => one).find((one) => clauses.some((clause) => clause.kind === one));
  const words = clauses.flatMap((clause) => (clause.kind === null ? [clause.words] : [])).join(', ');
  if (kind !== undefined && words === '') return { kind, unless: null };
  if (kind !== undefined && CLOSES.includes(kind) && !ANSWERS.test(words))
    return { kind, unless: { words, often: OFTEN.besideTalk } };
  return TO_PEOPLE.test(said.replace(/[’‘`]/gu, "'"))
    ? { kind: 'others', unless: { words: said, often: OFTEN.toPeople } }
    : null;
};

const WHATS_UP =
  /^\W*(?:(?:hi|hey|hello|hiya|ok|yo|so|(?:good )?(?:morning?|afternoon|evenin'?g?)),? )*(?:(?:what's|whats|what is|wots|wot's) (?:up|new|happening|going on|cooking|the craic)|wh?a+s+up|sup)(?: (?:mate|bro|dude|man|guys|all|here|everyone|then|bot|pierhand))*\W*$/iu;

/** Talk, and "what's up", which where no walk waits asks for what is in the sky. */
export const talkInWalk = (text: string): TalkFound | null =>
  WHATS_UP.test(text.replace(/[’‘`]/gu, "'")) ? { kind: 'hello', unless: null } : talkIn(text);

const MATE =
  /\b(thanks|thank (?:you|u)|thx|thnx|cheers|ta|ty|hi|hello|hiya|hey|yo|sup|al ?right|morning|evening|bye|cya|laters|night|sorry|soz|lol|haha|welcome|nice one|good one|xmas|christmas|new year)[ ,.!]+m8\b/giu;
/** "Cheers m8": beside a greeting or a thanks nobody means the Lagoon. */
export const withMates = (text: string): string => text.replace(MATE, '$1 mate');

/** A thanks with something behind it. */
export const THANKS_FIRST =
  /^\s*(?:(?:ok|okay|great|many|cool),? )*(?:thanks|thank you|ta|cheers|thx)(?: mate\b(?=.*\p{L}))?[ ,.!]+(?=\S)/iu;
