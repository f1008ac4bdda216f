/**
 * Questions of the last target as they are said across a garden: "where exactly is it", "how many hours he is visible", "do i need scope for it",
 * "hows it look in 10x50". As whole questions of "it", with what they say of an hour or a telescope behind them.
 */

const AND = '(?:(?:and|n|&|so|ok|okay|right|but|then|oh|ah|hm+|now|please|pls|just),? )*';
const IT = '(?:it|that|this|they|them|that one|he|she|him|her)';
const WE = '(?:i|we|you|u|one|a beginner|the kids|my (?:son|daughter|kids?))';
const END = `(?: (?:then|now|too|please|pls|tonight|for ${IT}|to see ${IT}))*`;
const form = (pattern: string): RegExp => new RegExp(`^${AND}(?:${pattern})${END}$`, 'iu');

const GLASSES =
  '(?:a |an |my |the |any |some )?(?:big(?:ger)? |good |proper |pair of )*(?:tele ?scopes?|scopes?|tele|binoculars?|binos?|bins|optics?|optical aid|kit|gear|dob|equipment)';
/** Of whatever it is: a double's stars are told of otherwise. */
const NEEDED = 'do i need a telescope for it';
const BY_EYE = 'can i see it with my eyes';
const WINDOW = 'can i see it';
const SETS = 'when does it set';

/** Whole, as they stand. */
const WHOLE: readonly (readonly [RegExp, string])[] = [
  [
    form(
      `(?:exactly |roughly |precisely )?(?:where ?abouts?|where(?:'?s| is| are)?)(?: in the sky)?(?: exactly| roughly| precisely| abouts?| right)*(?: (?:is|are))?(?: ${IT})?(?: (?:exactly|roughly|precisely|abouts?|in the sky|up there|at))*`,
    ),
    'where is it',
  ],
  [
    form(
      `how late (?:would|will|do|should|must|does|did) ${WE} (?:have |need |want )?(?:to )?(?:stay|sit|wait|be|keep)(?: up| awake)?|(?:do|will|would|must|should) ${WE} (?:have |need )?(?:to )?(?:stay|sit|wait) up(?: late)?`,
    ),
    'am i too early for it',
  ],
  [
    form(
      `(?:for )?(?:how long|how many hours|how much time)(?: (?:is|will|can|could|do|does|would|have|has|are))?(?: ${IT}| ${WE})?(?: (?:is|are|be|stay|stays|remain|remains|get|got|have|see|view|observe|watch))*(?: ${IT})? ?(?:visible|up(?: for)?|above (?:the )?horizon|in the sky|observable|viewable|left|for|seen|to (?:see|look|view|observe)(?: at)?(?: ${IT})?)?`,
    ),
    WINDOW,
  ],
  [
    form(
      `from when|from when (?:to|till?|until) when|(?:between|from|at)? ?(?:what|which) (?:times|hours)(?: (?:is|are|can|will))?(?: ${IT}| ${WE})?(?: (?:be |see )?(?:visible|up|seen|${IT}))?|(?:until?|till?) (?:when|what time|what hour)(?: (?:is|can|will) (?:${IT}|${WE})(?: (?:be |see )?(?:visible|up|${IT}))?)?|how late (?:is|can|could|will) (?:${IT}|${WE})(?: (?:be |still )?(?:visible|up|see|view|observe)(?: ${IT})?)?`,
    ),
    WINDOW,
  ],
  [
    form(
      `(?:when|what time|how soon)(?:'?ll| will| does| do| is| are|'?s)? (?:${IT}|${WE}) (?:be |get |have |is |are )?(?:gone|going(?: down)?|disappear(?:s|ed|ing)?|vanish(?:es|ed)?|lose (?:it|them)|out of (?:sight|view)|drops?(?: out| below| down)?.{0,16}|too low|leaves?|goes away|go away|go|goes|dips?.{0,16})`,
    ),
    SETS,
  ],
  [
    form(
      `how long (?:until?|till?|before) (?:it|they|he|she|we|i)(?:'s|s| is| are| will)? ?(?:be )?(?:gone|going|lose (?:it|them)|disappears?|vanish(?:es)?|sets?|goes(?: down)?|down|too low)`,
    ),
    SETS,
  ],
  [
    form(
      `(?:is|are|gets?|will|does|do) ${IT} (?:be |get |getting |going to (?:be |get ))?(?:any |much |even )?(?:higher|better|easier)(?: placed| up)? (?:later|afterwards|in an hour|in a (?:bit|while)|after midnight)(?: on| tonight)*|(?:does|will) ${IT} (?:get |go |climb |come )?(?:any |much )?higher|should ${WE} wait|(?:better|higher) later(?: on)?`,
    ),
    'when is it highest',
  ],
  [
    form(
      `(?:(?:at|in) )?(?:which|what) (?:hour|time|moment) (?:${IT} )?(?:is |it is )?(?:the )?(?:most high|highest|most up)|when (?:(?:is )?${IT} |is )?(?:the )?most high`,
    ),
    'when is it highest',
  ],
  [
    form(
      `(?:what |how )?(?:about )?(?:the |its |it's |his |her )?rings?(?: on it)?|(?:does|has|have|do|did) ${IT} (?:have |got |has )?(?:any |a |the |its )?rings?|${IT} (?:has|have|got) (?:any |a )?rings?`,
    ),
    'can i see its rings',
  ],
  [
    form(
      `(?:do|will|would|does|should) (?:${WE}|it) (?:really |actually |even )?(?:need|require|want|take)(?: to (?:use|have|bring))? ${GLASSES}|(?:need|is|are) ${GLASSES} (?:needed|required|necessary|a must)`,
    ),
    NEEDED,
  ],
  [
    form(
      `(?:is|are) ${IT} (?:a )?(?:naked|bare)[- ]eyes?(?: (?:object|visible|thing|one))?|(?:(?:visible|seen) )?(?:to|with|by) (?:the |my |just |only )*(?:naked |bare |unaided )?eyes?(?: only| alone)?|(?:(?:can|could) ${WE} (?:see|spot|find) ${IT} )?without (?:any )?${GLASSES}`,
    ),
    BY_EYE,
  ],
  [
    form(`how (?:big|large|small) (?:will|does|do|would|is|can) ${IT} ?(?:be|look|looks|appear|seem)?`),
    'how big is it',
  ],
  [
    form(
      `how (?:far|close|near)(?: away| off)? (?:is ${IT} )?(?:from|to|off) the sun(?: is ${IT}| does ${IT} (?:get|come|stand))?|distance (?:from|to) the sun`,
    ),
    'how far is it from the sun',
  ],
  [
    form(`how (?:close|far|near)(?: away| off)? (?:is ${IT} )?(?:to|from|off) the meridian(?: is ${IT})?`),
    'what is its hour angle',
  ],
  [form(`what (?:can|could|will|would|might|do) ${WE} (?:see|make out|spot|find) on ${IT}`), WINDOW],
  [form(`what (?:is )?(?:the )?(?:magnitude|brightness) of ${IT}`), 'how bright is it'],
];

/** Behind which an hour or a day stands. */
const AT =
  '(?<rest>(?:at|by|around|about|@|before|after|in|on|this|next|tomorrow|tonight|midnight|later|monday|tuesday|wednesday|thursday|friday|saturday|sunday)\\b.{0,30})';
/** Behind which a telescope stands. */
const WITH = `(?:in|with|through|thru|using|from|w) (?<rest>(?:a |an |my |our |the |just |only |some |pair of )*(?:\\d.{0,30}|binoculars?|binos?|bins|small .{0,20}|big .{0,20}|little .{0,20}))`;
const behind = (pattern: string, rest: string): RegExp => new RegExp(`^${AND}(?:${pattern}) ${rest}$`, 'iu');

/** With what is said behind them. */
const WITH_REST: readonly (readonly [RegExp, string])[] = [
  [
    behind(`what (?:can|could|will|would|might|do) ${WE} (?:see|make out|spot|find) on ${IT}`, WITH),
    'can i see it with',
  ],
  [behind(`how (?:high|low)(?: up)?(?: (?:is|will|would) ${IT}(?: be)?)?`, AT), 'how high is it'],
  [behind(`where(?:'?s| is| will| would)?(?: ${IT})?(?: be)?(?: exactly)?`, AT), 'where is it'],
  [
    behind(
      `(?:how|what)(?:'?s| is| does| do| will| would)? ?(?:${IT} )?(?:look|looks|be|show|shows|show up|appear|appears|like|look like|looks like|any good)|how(?:'?s| is) ${IT}|what(?:'?s| is) ${IT} like`,
      WITH,
    ),
    'can i see it with',
  ],
  [
    behind(
      `(?:(?:is|are|would|will) )?(?:${IT} )?(?:be )?(?:possible|doable|enough|feasible|visible|worth (?:it|a (?:look|go|try)))(?: to see ${IT})?`,
      WITH,
    ),
    'can i see it with',
  ],
];

/** Null: it is none of them. */
export const saidLoosely = (said: string): string | null => {
  const whole = WHOLE.find(([pattern]) => pattern.test(said))?.[1];
  if (whole !== undefined) return whole;
  for (const [pattern, full] of WITH_REST) {
    const rest = pattern.exec(said)?.groups?.['rest'];
    if (rest !== undefined) return `${full} ${rest}`;
  }
  return null;
};
