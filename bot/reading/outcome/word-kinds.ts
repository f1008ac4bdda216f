/**
 * Kinds of words that tell what came of a remedy: so a line is like another that says it in other words of the same kinds. The readers of a
 * cure build their patterns of the lists below, each as one choice of a regular expression.
 */

const either = (...words: readonly string[]): string => `(?:${words.join('|')})`;

/** What a goto is sent to. */
export const STAR = either(
  'stars?|targets?|objects?|planets?|moon|nebulae?|galax(?:y|ies)|clusters?|orion|pleiades|andromeda|jupiter|saturn|mars|venus|mercury|uranus|neptune',
  'vega|arcturus|capella|sirius|rigel|deneb|altair|polaris|betelgeuse|aldebaran|regulus|antares|spica|procyon|pollux|castor|fomalhaut|mizar|alcor',
  'albireo|alpheratz|algol|mirach|almach|alkaid|dubhe|merak|canopus|achernar|acrux|hadar|denebola|bellatrix|saiph|rasalhague|alphard|hamal|mirfak|schedar',
  '(?:m|ngc|ic|sao|hip) ?\\d+',
);
/** The mount and what belongs to it, taken as one. */
export const MOUNT = either('(?:the |my |our |this |whole )*(?:mount|scope|telescope|tube|bridge)');
/** What steers it. */
export const PROGRAM = either(
  '(?:the |my |our |all |both |every |two |three |four )*(?:programs?|programmes?|apps?|software|laptop|computer|pc|mac|driver|planetarium)',
);
export const IT = either('it|she|he|they|that|this|everything|all|both|things');
/** Where a target should stand. */
export const MIDDLE = either(
  'middle|cent(?:re|er)|cent(?:red|ered)|eyepiece|field(?: of view)?|view|frames?|picture|cross ?hairs?|spot on|bang on|dead on|where (?:it|they|i) \\w+(?: \\w+)?',
);
/** What is told to be gone. */
export const TROUBLES = either(
  'drops?|drop(?: |-)?outs?|dropping|disconnects?|disconnections?|errors?|resets?|re-?starts?|re-?boots?|cut(?: |-)?outs?|refusals?|troubles?|problems?|issues?|time ?outs?|hiccups?|stops?|complaints?|miss(?:es)?',
);
/** It is so since the remedy. */
export const NOW = either(
  'now|again|at last|finally|this time|since|any ?more|no longer|straight (?:away|off)|at once',
);

/** Kind → words, mended and without apostrophes; a word may be of several. */
const WORDS: readonly (readonly [kind: string, words: string])[] = [
  [
    'trouble',
    'drop drops dropped dropping dropout dropouts disconnect disconnects disconnected disconnection disconnects hiccup ' +
      'hiccups hitch hitches glitch glitches error errors problem problems trouble troubles bother issue issues fault faults ' +
      'fail fails failed failing failure timeout timeouts reset resets resetting restart restarts restarted refusal ' +
      'refusals refuse refuses refused flicker flickers stall stalls stalling stalled freeze freezes froze frozen complain ' +
      'complains complaint complaints moan moans blink blinks dip dips dims lose loses losing lost loss cut cuts die dies ' +
      'died stop stops stopped stopping hang hangs jump jumps hop hops miss misses off wrong crash crashes garbage message ' +
      'messages break breaks interruption jerk slip slips grind grinds noise groan groans vanish',
  ],
  ['none', 'no not never nothing none zero without nowt nae neither nor cannot nix nil nobody hardly nay niet nicht'],
  [
    'good',
    'fine good ok okay well great perfect perfectly lovely brilliant nice nicely smooth smoothly normal normally right ' +
      'properly proper correct correctly solid steady stable rock sweet grand super happy happily beautifully beautiful ' +
      'clean strong exact exactly precise precisely accurate accurately dead spot bang alright champion cracking reliable ' +
      'reliably tidy sound ace tiptop',
  ],
  [
    'cured',
    'fixed sorted solved cured mended repaired resolved cracked nailed history over cure trick bingo eureka hooray ' +
      'hurrah hurray presto bob success victory',
  ],
  [
    'joy',
    'thanks thank thx ta ty cheers bless yay wow brilliant great wonderful fantastic amazing excellent lovely magic superb ' +
      'danke merci gracias grazie grateful obliged genius star legend hero lol haha yes yeah yep yess yup praise bravo tack ' +
      'hurray finally phew',
  ],
  [
    'does',
    'works work working worked connects connect connecting talks talk talking moves move moving goes go going went slews ' +
      'slew slewing slewed tracks track tracking answers answer answering answered replies reply replied responds respond ' +
      'responding runs run running ran obeys obey listens listen speaks speak speaking follows follow finds find sees see ' +
      'seen lands land points point turns turn turning behaves behave guides guiding drives drive driving centres accepts ' +
      'accept accepted takes took taken picks picked opens open opened comes come came woke wakes sings chatting pairs ' +
      'paired holds hits hit reaches',
  ],
  ['up', 'up on online alive awake connected in through away back'],
  [
    'stays',
    'stays stay stayed staying holds hold held holding keeps keep kept remains remained lasts lasted lasting sits stands put',
  ],
  ['now', 'now again finally last since immediately straight instantly once'],
  [
    'lasting',
    'hour hours night nights evening minutes mins min session dawn day days long whole entire all since so ages time times twice',
  ],
  [
    'target',
    'star stars target targets object objects planet planets moon jupiter saturn mars venus vega arcturus capella sirius ' +
      'rigel deneb altair polaris nebula galaxy cluster ring rings double',
  ],
  ['middle', 'middle centre center eyepiece field view crosshair crosshairs place spot frame'],
  [
    'as-ever',
    'still same before unchanged identical persists persist always already ever exactly previous earlier either difference ' +
      'change changed improvement luck joy effect odds help helped helps',
  ],
  [
    'in-part',
    'better less fewer rarer improved improvement partly half almost nearly only sometimes bit somewhat closer nearer longer ' +
      'further often but though except yet however little',
  ],
  ['other-trouble', 'worse new another different altogether neither both now broke broken smell smells burnt too even'],
  [
    'not-yet',
    'will later tomorrow try trying going gonna wait moment sec weekend soon yet hang minute ordered buy fetch charging ' +
      'charge downloading installing checking looking shall monday tonight just need tea brb',
  ],
  [
    'cannot',
    'cannot unable impossible possible allowed permit have own spare password admin lack locked greyed without such dare missing',
  ],
  ['wish', 'hope hopes hopefully hoping would should could might may if maybe perhaps wish think guess want suppose'],
  ['past', 'yesterday last before used always ever was were had year week month sunday saturday friday winter summer'],
  [
    'others',
    'his her hers their mate mates friend friends neighbour neighbours brother brothers handset keypad buttons other',
  ],
  ['asking', 'what how where why which who when does do is should can could or mean'],
  [
    'doing',
    'did done set put changed change swapped swap switched switch turned turn closed close shut typed type chose chosen ' +
      'picked selected installed replaced moved tightened tight plugged pushed unticked ticked cleaned removed forgot reset ' +
      'restarted rebooted updated killed ended quit found',
  ],
];

const KINDS = new Map<string, string[]>();
for (const [kind, words] of WORDS)
  for (const word of new Set(words.split(' '))) {
    const own = KINDS.get(word) ?? [];
    own.push(kind);
    KINDS.set(word, own);
  }

const NO_KINDS: readonly string[] = [];

export const wordKindsOf = (word: string): readonly string[] => KINDS.get(word) ?? NO_KINDS;
