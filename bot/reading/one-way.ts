/** Which of the ways that a text names are the one in hand: not one that is over or lies unused, nor one that does well beside another that fails. */
import type { Finding } from './finding.js';
import { isOfWorking } from './one-system.js';
import { stretchAfter, stretchBefore } from './stretch.js';

/** So far a sentence and the next reach at most, either way. */
const REACH = 160;

const WAY =
  '(?:usb|wi-?fi|wlan|wireless|bluetooth|bt|serial|cables?|leads?|wired?|network|ethernet|lan|hotspot|adapter|adaptor|dongle|bridge|module)';
/** "… has bluetooth but I've not used that", "there is wifi too, I never use it". */
const UNUSED =
  /^[^.;!?\n]{0,24}?(?:,| but| and| which| that| though|\.)? ?(?:i |we |i['’]?ve |we['’]?ve |it['’]?s |is |was )?(?:have |has |had |am |do |did )?(?:not|never|don['’]?t|didn['’]?t|haven['’]?t|isn['’]?t|ain['’]?t) (?:ever |yet |really |even |being |been )*(?:using|used|use|tried|in use|touched|set up)(?: (?:it|that|this|them|those|yet|anymore|any more|at all))?(?=[\s,.;!?]*(?:$|[,.;!?\n]| i\b| but\b| and\b| so\b| because\b))/iu;
/** "I had problems with bluetooth, those are gone". */
const HAD = /\b(?:had|have had|was|were|used|used to (?:be|have|use|run))\b[^,.;!?\n]{0,40}$/iu;
const OVER =
  /\b(?:(?:that|those|these|all|they|it)(?: is| are|['’]s|['’]re| was| were)? (?:gone|over|history|behind me|in the past|fixed|solved)|no more of (?:that|it)|not any ?more|gave (?:it|that|up)|given up|got rid)\b/iu;
/** "USB worked, I wanted wifi", "was on wifi before, now it is on a cable". */
const WORKED =
  /^[^,.;!?\n]{0,12}?\b(?:worked|used to|was (?:fine|ok|okay|good|solid|perfect|stable)|ran|connected)\b/iu;
const WENT_OVER = new RegExp(
  `\\b(?:wanted|now (?:on|it|i['’]?m|with|using|by|over|via)|switched|changed|moved|went|gone over|upgraded|fitted|replaced|instead)\\b[^.;!?\\n]{0,40}\\b${WAY}\\b`,
  'iu',
);
/** "… since I use a cable", "now I'm on usb": said after a way that was had. */
const SINCE_ANOTHER = new RegExp(`\\b(?:since|now|nowadays|today|these days)\\b[^.;!?\\n]{0,40}\\b${WAY}\\b`, 'iu');

/** "If the mount were on wifi": it is not. */
const UNREAL = /\bif\b[^,.;!?\n]*\b(?:were|was|had)\b[^,.;!?\n]{0,24}$/iu;
/** "I'd love bluetooth", "I plan to go wireless": not there yet, where another way is told beside it. */
const FANCIED =
  /\b(?:wish(?:es|ed)?|would (?:love|like|rather|prefer)|['’]d (?:love|like|rather|prefer)|(?:plan|planning|want|wants|wanted|hope|hoping) to|thinking (?:of|about)|some ?day)\b[^,.;!?\n]{0,40}$/iu;

interface Around {
  /** Of its sentence, up to it … */
  readonly before: string;
  /** … and with it. */
  readonly upTo: string;
  /** Of its sentence, from it on. */
  readonly after: string;
  /** … and the sentence that follows. */
  readonly beyond: () => string;
}

const aroundOf = (text: string, { span }: Finding): Around => {
  const before = stretchBefore(text, span.start, REACH);
  const after = stretchAfter(text, span.end, REACH);
  const next = span.end + after.length + 1;
  return {
    before,
    upTo: `${before}${text.slice(span.start, span.end)}`,
    after,
    beyond: () => `${after}. ${stretchAfter(text, next, span.end + REACH - next)}`,
  };
};

/** Over, or there and not used. */
const isLeftBehind = ({ before, upTo, after, beyond }: Around): boolean => {
  if (UNUSED.test(after) || UNREAL.test(upTo)) return true;
  if (HAD.test(before) && (OVER.test(beyond()) || SINCE_ANOTHER.test(beyond()))) return true;
  return WORKED.test(after) && WENT_OVER.test(beyond());
};

const namesWay = ({ entry, by }: Finding): boolean => entry.path !== undefined && by === 'words';
const pathsOf = (findings: readonly Finding[]): readonly string[] => [
  ...new Set(findings.map(({ entry }) => entry.path ?? '')),
];

/** A text that names ways more often than this ("usb, usb, usb …") tells of none that it is over; nobody writes so. */
const MOST_NAMED = 100;
const NONE: ReadonlySet<Finding> = new Set();

/**
 * @param all in the order they stand in the text
 * @param text folded, as the spans are
 * @param agree whether two ways, or families of ways, have one in common
 * @returns those that are about another way than the one in hand
 */
export const otherWays = (
  all: readonly Finding[],
  text: string,
  agree: (a: string, b: string) => boolean,
): ReadonlySet<Finding> => {
  const named = all.filter(namesWay);
  if (named.length > MOST_NAMED) return NONE;
  const behind = new Set<Finding>();
  const fancied: Finding[] = [];
  for (const one of named) {
    const around = aroundOf(text, one);
    if (isLeftBehind(around)) behind.add(one);
    else if (FANCIED.test(around.before)) fancied.push(one);
  }
  if (fancied.length < named.length - behind.size) for (const one of fancied) behind.add(one);
  const left = named.filter((one) => !behind.has(one));
  // Ways are few, however often they are named.
  const against = (paths: readonly string[]): ReadonlySet<string> =>
    new Set(pathsOf(left).filter((own) => paths.some((other) => !agree(own, other))));
  const contested = against(pathsOf(left));
  // "Fine by usb, over bluetooth nothing": nothing is to be mended on the way that does well.
  const working = new Set(left.filter((one) => contested.has(one.entry.path ?? '') && isOfWorking(text, one)));
  const failed = against(pathsOf(left.filter((one) => !working.has(one))));
  for (const one of working) if (failed.has(one.entry.path ?? '')) behind.add(one);
  return behind;
};
