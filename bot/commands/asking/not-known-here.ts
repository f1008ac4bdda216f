/** What no reckoning here answers, and what needs a word more: said kindly, with the right next step. */
import { problem } from '../../ground/problem.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import type { Reading } from './sentence/asked.js';

/** The line that answers, or the answer itself where there is no such command; null when the words are no question of ours. */
export type PlainReading = Reading | { readonly outcome: Outcome; readonly isTopic?: true } | null;

/** Reads what a pattern found. */
type Answered = readonly [RegExp, () => PlainReading];

const refused = (
  message: string,
  ...next: readonly (readonly [label: string, run: string])[]
): (() => PlainReading) => {
  const choices = next.map(([label, run]) => ({ label, run }));
  return () => ({ outcome: problem('not-known-here', message, choices) });
};

/** In two sentences; the list of commands is for who asks for it. */
const whoIAm = (): PlainReading => ({
  outcome: reply({
    title: 'Pierhand',
    summary:
      'I am a bot for the night: I tell what is up, where and when, and help find out why a mount will not connect or point. Ask in plain words, and tell me once where you observe, such as "my site is Ely, England".',
    choices: [
      { label: "What's up tonight?", run: 'tonight' },
      { label: 'The mount does not connect', run: 'triage' },
      { label: 'All commands', run: 'help' },
    ],
    pointsAt: NOWHERE,
  }),
});

/** What I do not know; the first match answers, before the sentence is read for its parts. */
export const UNKNOWN: readonly Answered[] = [
  [
    /^(?:(?:show|tell|give|list) (?:me |us )?)?(?:more|all|the rest|all of (?:them|it)|all ten|more of (?:them|it))(?: please| pls)?$/u,
    () => ({ line: 'tonight all:yes' }),
  ],
  [/^\?+$|^(?:what can (?:you|i) (?:do|ask)|how does this work|commands?|options|menu)$/u, () => ({ line: 'help' })],
  [
    /^(?:(?:hi|hey|hello|and|so|but),? )*(?:who|what) (?:are|r|is|made) (?:you|u|this bot|pierhand)(?: then| anyway)?$/u,
    whoIAm,
  ],
  [
    /\bufos?\b(?! galaxy)|\b(?:light|dot|star|something|thing|it)\b.*\b(?:mov\w+|went|flew|cross\w*|travel\w*)\b.*\b(?:quick\w*|fast|slowly|across (?:the|my) sky|no sound|silent\w*)\b(?!.*\b(?:mount|scope|telescope|view|eyepiece|drift\w*)\b)/u,
    refused(
      'A steady light that crosses the sky in a minute or some without a sound is a satellite; one that blinks is an aircraft, one that is gone in a second a meteor. I follow none of them, only what stays among the stars.',
      ['Shooting stars tonight?', 'ahead showers on:tonight'],
      ['Which bright star is that?', 'bright'],
    ),
  ],
  [
    /\b(?:iss|space station|satellites?|starlink|tiangong)\b|\bhubble(?! ?'?s variable| nebula)\b/u,
    refused(
      'I do not follow satellites: their orbits change by the day, so a good answer needs fresh elements that I do not have. A pass list made today by a space agency will be right; for the sky behind them, ask tonight.',
      ["What's up tonight?", 'tonight'],
    ),
  ],
  [
    /\b(?:remind|tell|let|ping|alert|warn|wake|notify|message|text|poke)\b.*\b(?:when|if|once|whenever|as soon as|should|in case)\b.*\b(?:clear(?:s|ed|ing|er)?(?! (?:of|the|my|our|those|that)\b)|cloud\w*|rain\w*|weather|fog\w*|mist\w*|wind\w*|seeing|snow\w*|storm\w*|transparency)\b/u,
    refused(
      'I cannot see the weather, so I cannot wait for it. I can wait for an hour, for the dark, or until a target is high enough: look out of the door then.',
      ['When it is dark', 'remind when:dark'],
      ['At 21:00', 'remind at:21:00'],
      ['When M 42 is 30° high', 'remind M 42 above:30'],
    ),
  ],
  [
    /\bhow (?:cold|warm|humid|windy)\b|\bbelow freezing\b|\b(?:weather|cloudy|forecast|rain(?:ing)?|will it (?:be )?clear|clear sk(?:ies|y|ys) (?:tonight|tomorrow|later|on|this)|is it (?:going to be )?clear(?! of)|the seeing|seeing (?:like|good|bad|tonight)|transparency|dew(?! cap| shield| heater| on | strap|\b.*\b(?:telescope|scope|lens\w*|eyepiece|mirror|corrector|finder|optics|glass|tube|binoculars|form\w*|stop\w*|prevent\w*|off)))\b|\b(?<!magellanic |star )clouds?\b/u,
    refused(
      'I cannot see the weather: your national weather service can. What I know is when it is dark and what is up.',
      ['When is it dark?', 'dark'],
      ["What's up tonight?", 'tonight'],
    ),
  ],
  [
    /\b(?:leave|leaving|left)\b.*\b(?:out|set up|outside|outdoors|uncovered|in the garden|on the (?:patio|lawn|terrace|balcony|deck))\b|\b(?:leav\w*|left|stor\w+|stand\w*|park\w*|keep\w*|put)\b.*\b(?:scope|telescope|tube|dob\w*|refractor|newtonian|reflector|it)\b.*\b(?:uncapped|uncovered|(?:no|without) (?:the |a |its |any )?(?:cap|caps|cover|lid)|(?:caps?|lid|cover) off)\b|\b(?:leave|park|stand|store|left)\b.*\bin (?:the )?(?:full )?sun\b|\b(?:uncapped|(?:no|without) (?:the |a |its )?(?:cap|caps|cover|lid)(?: on)?)\b.*\b(?:day|daytime|daylight|sun|outside|garden|patio)\b|\b(?:day|daytime|daylight|sun|outside|garden|patio)\b.*\b(?:uncapped|(?:no|without) (?:the |a |its )?(?:cap|caps|cover|lid))\b/u,
    refused(
      'No, not open, cap it first: while the Sun is up an uncapped tube or finder may set itself or what is near alight, and blind whoever looks in. I can warn you before sunrise.',
      ['Warn me before sunrise', 'remind sunrise'],
      ['When is sunrise?', 'dark'],
    ),
  ],
  [
    /\b(?:great )?red spot\b|\bgrs\b|\bcentral meridian\b/u,
    refused(
      'I do not reckon which side of Jupiter faces us, nor when the Red Spot does: its drift has to be measured. I know where Jupiter and its moons stand.',
      ['Jupiter tonight', 'up Jupiter'],
      ['Its moons', 'moons'],
    ),
  ],
  [
    /\boccult(?:s|ed|ation|ations|ing)?\b(?!.*\b(?:io|europa|ganymede|callisto)\b)(?<!\b(?:io|europa|ganymede|callisto)\b.*)|\bmoon (?:hides?|hiding|covers?|covering) /u,
    refused(
      'I do not reckon what the Moon covers: it hangs on where one stands to a few kilometres. I tell when it comes close to planets and bright stars; an almanac or an occultation society has the times.',
      ['Close meetings to come', 'ahead meetings'],
      ['The Moon tonight', 'up Moon'],
    ),
  ],
  [
    /\bstars? (?:are |is )?(?:trail\w*|streak\w*|elongated|not round)\b|\b(?:trailing|elongated) stars?\b/u,
    refused(
      'Stars that trail: the mount does not track, or its polar axis is off. See that tracking is on and its rate sidereal; then set the axis by the pole, and by the drift of a star.',
      ['Where the pole star stands', 'pole'],
      ['By the drift of a star', 'help drift'],
      ['The mount does not move', 'triage the mount does not track'],
    ),
  ],
  [
    /\bstars?\b.*\b(?:in|by|during) (?:the )?(?:day|daytime|daylight|broad daylight)\b/u,
    refused(
      'By day only the brightest stars show, in a telescope that a mount points for you. Never sweep about for one: the Sun blinds in an instant. Ask sun first whether a star stands clear of it.',
      ['Is Vega safe at noon?', 'sun Vega at:noon'],
      ['When is it dark?', 'dark'],
    ),
  ],
  [
    /\b(?:aurora|northern lights|southern lights|zodiacal light|noctilucent)\b/u,
    refused(
      'I do not forecast that: it hangs on the Sun or the high air, and I see neither. I can say when it is dark.',
      ['When is it dark?', 'dark'],
    ),
  ],
];

/** "You are useless": no quarrel, and where to go on. */
const SCOLDS =
  /^(?:(?:ok|well|oh|no|god|omg|ffs|wow|sorry|but|so|this|that|argh|ugh),? )*(?:(?:you|u|ya|the bot|this bot|pierhand|bot|it|this|that) ?(?:are|'re|re|r|is|'s|was|were|s)?(?: just| so| really| no| totally| completely| not| a| an| of| such| pretty| absolutely)* (?:useless|stupid|dumb|rubbish|crap|garbage|idiot|idiotic|no (?:help|use|good)|help|helpful|use|good|moron|terrible|awful|hopeless|pathetic|annoying|waste(?: of (?:my )?time)?|nonsense|wrong)(?: bot| app| thing)?|(?:stupid|dumb|useless|rubbish|crap|silly|bad|shit|idiotic|hopeless) (?:bot|robot|machine|app|thing)|(?:useless|rubbish|i hate (?:you|this|this bot)))$/u;

const sorry = (): PlainReading => ({
  outcome: reply({
    title: 'Sorry',
    summary:
      'That was no help, then. Say it once more in other words, or pick one; a person of your club may know more than I do.',
    choices: [
      { label: "What's up tonight?", run: 'tonight' },
      { label: 'The mount does not work', run: 'triage' },
      { label: 'What can be asked', run: 'help' },
    ],
    pointsAt: NOWHERE,
  }),
});

const IS_LOST =
  /^(?:(?:help|ok|sorry|hi|argh|oh|well|please|and|now),? )*(?:i'?m|i am|we'?re|we are|im|feeling|still|a bit|totally|completely) ?(?:so |just |still |really |very |all |quite |totally |completely |utterly |a bit |a little )*(?:lost|confused|clueless|overwhelmed|baffled|puzzled)(?:,? (?:now|here|please|help|what (?:do|should|can) i do|what now|where do i (?:start|begin)|already|up there|in the sky|again|me))*$/u;

const whereToBegin = (): PlainReading => ({
  outcome: reply({
    title: 'Let us begin with what you see',
    summary:
      'In the sky: say which way you look, such as “bright star in the east”, and I name it. At the telescope: say what you look for, such as “how do I find M 31”. At the mount: say what it does not do.',
    choices: [
      { label: 'Which bright star is that?', run: 'bright' },
      { label: 'A few easy things tonight', run: 'tonight' },
      { label: 'The mount does not work', run: 'triage' },
    ],
    pointsAt: NOWHERE,
  }),
});

/** Last of all: what needs a word more than was said. */
export const NEEDS_MORE: readonly Answered[] = [
  [IS_LOST, whereToBegin],
  [SCOLDS, sorry],
  [
    /^(?:(?:ok|please|no),? )*(?:stop|cancel|quit|exit|end|abort|halt|alto|stopp|basta|arr[eê]te)(?: (?:it|that|now|please|all|everything|this))*$/u,
    refused(
      'Nothing of yours is under way here. A reminder is called off from the list.',
      ['My reminders', 'remind list'],
      ["What's up tonight?", 'tonight'],
    ),
  ],
  [
    /\bpoints? (?:straight )?(?:at|to|into|towards?) (?:the )?(?:ground|floor|earth|grass|tripod)\b|\b(?:below|under) the horizon\b.*\b(?:goes|points|slews)\b/u,
    refused(
      'It points at the ground: most often the latitude or longitude has the wrong sign, the clock is half a day out, or the tube was not at its home when switched on. See what the controller should hold; then send it to a star, and tell me where it landed.',
      ['What to type into the controller', 'entries'],
      ['It moves the wrong way', 'triage it points at the ground'],
    ),
  ],
  [
    /\b(?:an|one|1|a) ?(?:hr|hour)s?\b(?: \w+)? (?:off|out|wrong|ahead|behind|late|early)\b|\boff by (?:an|one|1|a) ?(?:hr|hour)\b/u,
    refused(
      'An hour off is most often summer time or the time zone typed wrong. See what the controller should hold now; if it is right, say what it was sent to and where it landed: sent to Vega, landed 15 degrees west of it.',
      ['What to type into the controller', 'entries'],
      ['The sidereal time it should show', 'sidereal'],
    ),
  ],
  [
    /\b(?:wrong place|wrong spot|wrong star|wrong object|(?:not|isn'?t|won'?t|doesn'?t) (?:going|go|get) to the right|misses|missed|off by|lands? (?:in|at|on)|landed|goto is off|goto (?:misses|wrong)|points? (?:the )?wrong|way off|goto missed)\b/u,
    refused(
      'Let us find out which mistake it is. If you know what it was sent to and where it landed, say it so: sent to Vega, landed on Deneb; or: landed 20 arcminutes west of Vega.',
      ['Find out why', 'triage it goes to the wrong place'],
      ['What to type into the controller', 'entries'],
      ['It will not connect', 'triage'],
    ),
  ],
  [
    /^(?:what|which) side of the (?:mount|pier)|meridian flip/u,
    refused(
      'For which target? It hangs on where it stands: meridian M 42 says on which side, when it flips and how long you can follow it.',
      ['For M 42', 'meridian M 42'],
    ),
  ],
];

export const talked = (patterns: readonly Answered[], plain: string): PlainReading =>
  patterns.find(([pattern]) => pattern.test(plain))?.[1]() ?? null;
