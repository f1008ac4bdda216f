/** Talk with me and no question: a greeting, thanks in many words, a good-bye, answered kindly in a line. Pure. */
import { NOWHERE, reply } from '../../reply/reply.js';
import type { PlainReading } from './not-known-here.js';
import type { Asked } from './sentence/asked.js';
import { talkIn, type Talk } from './talk-among-people.js';

const said = (title: string, summary: string): (() => PlainReading) => {
  const choices = [
    { label: "What's up tonight?", run: 'tonight' },
    { label: 'The mount does not connect', run: 'triage' },
    { label: 'Help', run: 'help' },
  ];
  return () => ({ outcome: reply({ title, summary, choices, pointsAt: NOWHERE }) });
};

/** Greetings, thanks and good-byes; other talk is for people. */
const TO_TALK: Readonly<Partial<Record<Talk, () => PlainReading>>> = {
  hello: said('Hello', 'Ask me what is up tonight, where a target stands, or tell me what your mount will not do.'),
  thanks: said('You are welcome', 'Clear skies. Cap the tube before sunrise.'),
  farewell: said('Good night', 'Cap the tube and park the mount; clear skies.'),
};
/** "Ok", "great, that is clear", "ah cool, got it", "nice one". */
const PLEASED =
  'great|ok|okay|k|kk|nice(?: one)?|perfect|brilliant|brill|lovely|cool(?: beans)?|sweet|ace|fab|fabulous|awesome|amazing|excellent|superb|wicked|magic|champion|smashing|grand|fantastic|super|neat|sound|sorted|wow|understood|got (?:it|you|ya)|gotcha|makes sense|good(?: stuff| one| to know)|will do|fair enough|no worries|that helps|(?:very )?(?:helpful|useful|interesting)|love it|good (?:bot|lad|man|girl)|clever(?: bot| thing)?';
const ASSENT = new RegExp(
  `^(?:(?:oh|ah|aha|ooh|right|well|that'?s|thats|that is|really|very|so|how|all|and)[, ]+)*(?:${PLEASED})(?:[,!. ]+(?:${PLEASED}|then|mate|m8|pal|man|dude|bot|pierhand|lol|xx?))*(?:,? that .{0,25})?$`,
  'u',
);
const LONGEST_BESIDE_THANKS = 30;

/** Talk with me; beside thanks a few words more are none of the sky or the mount. */
const toTalk = (plain: string): PlainReading => {
  if (ASSENT.test(plain)) return TO_TALK.thanks?.() ?? null;
  const talk = talkIn(plain);
  if (talk === null) return null;
  const isAll = talk.unless === null || (talk.kind === 'thanks' && talk.unless.words.length <= LONGEST_BESIDE_THANKS);
  return isAll ? (TO_TALK[talk.kind]?.() ?? null) : null;
};

/** "Laters" alone is like the names of stars. */
export const talkBeside = (words: string, { targets, plain }: Asked): PlainReading =>
  targets.length > 0 && words.includes(' ') ? null : (toTalk(words.toLowerCase()) ?? toTalk(plain));
