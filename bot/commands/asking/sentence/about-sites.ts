/** Sentences about the places that are kept: saving one, using it from now on, renaming it, taking it away. */
import { commandLine } from '../question-parts.js';
import { isPrivateWord } from '../resolve-site.js';
import { nightLine, says, type Asked, type Reading, type Rule } from './asked.js';
import { isOfGear, mountSaid } from './mount-said.js';
import { capital } from '../../../reply/wording.js';
import { isLittle } from './words.js';

const HOW_SAVE =
  /\bhow (?:do|can|would|should) (?:i|you|we)\b.*\b(?:save|add|set|store|change|tell you|give you)\b.*\b(?:site|garden|home|house|place|observatory|location|position|where i)\b|\bwhere do i (?:put|save|set) my\b/u;
const SAVE =
  /^(?:please )?(?:save|add|store|remember|register|set up(?! (?:at|in|near|on|outside)\b)|set(?! up\b)|change|move|new(?= site\b))\b(?: (?:my|our|the|an?)\b)?(?: new\b)?(?: site\b)? ?(.*?)$/u;
const IS_AT =
  /^(?:(?:ok|hi|and|no|sorry|actually) )*(?:my )?([\p{L} ]{2,30}?)(?:'s| is)(?: now)?(?: (?:at|in|near))? /u;
const I_AM =
  /^(?:(?:hi|hello|so|ok|and|actually|this week|tonight) )*(?:(?:i'?m|i am|we'?re|we are|i|we)(?: (?:currently|now|here|have|just))*(?: (?:live|observe|observing|based|set up|out|standing|moved|staying|camping|camped))?|observing|set up|based|camped|camping|staying)(?: tonight| today| now)?(?: in| at| near| from| to)\b/u;
/** What a place is besides its town's name, and how one came there. */
const OF_PLACE =
  /^(?:club|field|garden|house|farm|cabin|lodge|observatory|park|dome|beach|hill|moved|staying|camping|camped)$/u;

const POSITION = /[-+−]?\d+(?:\.\d+)?\s*°?\s*[ns]?[ ,]+[-+−]?\d+(?:\.\d+)?\s*°?(?:\s*[ew]\b)?/gu;
const GLUE = '(?:at|in|near|to|from|is|location|position|:|,)';
const ENDS_IN_GLUE = new RegExp(`(?:^|\\s)${GLUE}(?:\\s+${GLUE})*$`, 'u');
const BEGINS_WITH_GLUE = new RegExp(`^(?:${GLUE}\\s+)+`, 'u');
/** "this place", "here", "it": what is saved, and no name. */
const POINTED_AT =
  /^(?:(?:this|that|the|my|our|current|new|an?|it|here|where i am)(?:\s+|$))*(?:place|spot|site|location|position|coordinates)?$/u;
const NAMED_SO = /^(.*?)(?:^|\s)(?:as|called|named|under(?: the name(?: of)?)?)\s+(.+)$/u;

const nameIn = (words: string): string => {
  const name = words.trim().replace(BEGINS_WITH_GLUE, '').replace(ENDS_IN_GLUE, '').trim();
  return POINTED_AT.test(name) ? '' : name.replace(/^(?:my|our|the) /u, '');
};

interface Saved {
  /** "" where none is said. */
  readonly name: string;
  /** Where the words put it after "as", the name standing before: "save my garden as norwich". */
  readonly position: string | null;
}

/** The name in "save my garden as 52.63, 1.30", "save this place as nans 54.49,-0.61", "save 52.63,1.30 as garden", "save as quarry …". */
const savedIn = (words: string, { place }: Asked): Saved => {
  const isTown = place !== null && !/\d/u.test(place);
  const rest = (isTown && !isPrivateWord(place) ? words.replace(place, ' ') : words).replace(POSITION, ' ').trim();
  const [, before = rest, after = ''] = NAMED_SO.exec(rest) ?? [];
  const [first, last] = [nameIn(before.replace(/(?:^|\s)as$/u, '')), nameIn(after)];
  const isPlaced = place !== null && !isPrivateWord(place);
  if (last !== '' && !isPlaced && first !== '') return { name: first, position: last };
  return { name: last === '' ? first : last, position: null };
};

/** "1100m", "350 metres": the height, and no part of a name. */
const HEIGHT = /(?:^|[\s,])(?:(?:at|elevation|height|alt(?:itude)?)[ :]*)?(\d{1,4}) ?m(?:et(?:er|re)s?)?(?=$|[\s,])/u;

const savedAs = (name: string, { place }: Asked, elevation?: string): Reading | null =>
  place === null ? null : { line: commandLine('site', 'add', { name, position: place, elevation }) };

const isOnlyPlace = ({ left, targets, kind }: Asked): boolean =>
  left.every((word) => OF_PLACE.test(word) || isOfGear(word)) && targets.length === 0 && kind === null;

/** The gear told beside a place is not kept with it. */
const gearNote = ({ plain, kit }: Asked): Pick<Reading, 'note'> => {
  const mount = mountSaid(plain);
  const said = [
    ...(mount === null ? [] : [`to keep the mount as well, type gear ${mount}`]),
    ...(kit === null ? [] : [`answers of this evening are for the ${kit}; say with: for another`]),
  ];
  return said.length === 0 ? {} : { note: `${capital(said.join('; '))}.` };
};

/** A height told beside the position, taken out of the words; "52.1, 0.3, 85 m": the last two are no position. */
const withoutHeight = (
  said: string,
  asked: Asked,
): { readonly words: string; readonly placed: Asked; readonly elevation?: string } => {
  const height = HEIGHT.exec(said.replace(POSITION, (found) => ' '.repeat(found.length)));
  if (height === null) return { words: said, placed: asked };
  const words = said.replace(height[0], ' ');
  const [at] = words.match(POSITION) ?? [];
  return { words, placed: at === undefined ? asked : { ...asked, place: at.trim() }, elevation: height[1] ?? '' };
};

/** "save my garden at 52.63, 1.30". */
const savingRule: Rule = (asked) => {
  const saving = SAVE.exec(asked.plain);
  if (saving === null || asked.targets.length > 0) return null;
  const { words, placed, elevation } = withoutHeight(saving[1] ?? '', asked);
  const { name, position } = savedIn(words, asked);
  if (position !== null) return { line: commandLine('site', 'add', { name, position }) };
  if (asked.place === null) return name === '' ? { line: 'help site' } : null;
  return savedAs(name === '' || name === 'home site' || name === asked.place ? 'my site' : name, placed, elevation);
};

/** Where the telescope stands is the site, and no name of one. */
const NO_NAME =
  /^(?:my )?(?:site|place|position|location|coordinates|city|town|village|spot|(?:tele)?scopes?|mount|tripod|gear|kit|rig|set ?up|camera|binoculars|binos)$/u;

/** "my site is norwich". */
const isAtRule: Rule = (asked) => {
  const own = IS_AT.exec(asked.plain)?.[1];
  const isOwn = asked.plain.startsWith('my ') || (own !== undefined && isPrivateWord(own));
  if (own === undefined || !isOwn || asked.left.some((word) => !own.split(' ').includes(word))) return null;
  return savedAs(NO_NAME.test(own) || isOfGear(own) ? 'my site' : own, asked);
};

const I_AM_AT =
  /^(?:i'?m|i am|we'?re|we are|i|we)(?: (?:live|observe|observing))? (?:in|at|near|from) (?!(?:a|an|the|my|our|it|this|that|home|work)\b)(\p{L}{3,}(?: \p{L}{3,}){0,2})$/u;

/** How long one stays there, and what for, is no part of its name. */
const FOR_A_WHILE =
  /(?:,? (?:(?:just|only|all) )?(?:(?:(?:for|over|until|till) )?(?:this|next|the|a|all) (?:long )?(?:weekend|week|month|summer|winter|evening|night)|tonight|today|(?:on|for|over) (?:(?:my|our|a|the) )?(?:hols?|holidays?|vacation|vacay|break|trip|visit|few (?:days|nights)|couple of (?:days|nights))))+$/u;

const withGear = (read: Reading | null, asked: Asked): Reading | null =>
  read === null ? null : { ...read, ...gearNote(asked) };

/** "im in norwich", and nothing asked. */
const iAmRule: Rule = (asked) => {
  const asksMore = says(asked, /\b(?:what|what's|which|see|look|up|when|how|is|can)\b/u);
  if (!I_AM.test(asked.plain) || asksMore || asked.targets.length > 0 || asked.kind !== null) return null;
  if (asked.place !== null && (asked.isPlaceSaved || isPrivateWord(asked.place)))
    return { line: commandLine('site', 'use', { name: asked.place }) };
  if (asked.place !== null && !asked.isPlaceUnknown)
    return isOnlyPlace(asked) ? withGear(savedAs('my site', asked), asked) : null;
  // A place that no list has: the answer says so, and how to save it by its position.
  const unknown = I_AM_AT.exec(asked.plain.replace(FOR_A_WHILE, ''))?.[1];
  return unknown === undefined ? null : { line: commandLine('site', 'add', { name: unknown, position: unknown }) };
};

const WHERE_AM_I =
  /^(?:list (?:all )?(?:my |the )?sites?|(?:my )?sites list|(?:what|which) sites .{0,20}|where am i|(?:what|which) is my site|what'?s my site|my sites?|saved sites?|(?:what|which|whats|what's) (?:is |are )?(?:the |my |our )?(?:sites?|places?|locations?) (?:is|are|do you|have i|did i|do i|have you|am i|are we|you)? ?(?:saved|kept|stored|set|have|use|using|used|on|at|got|know|in use)?(?: for me| now| currently| saved| you have)?|(?:is|are) (?:there )?(?:any |my |a )?(?:sites?|place|location) (?:is )?saved)$|\bwhere (?:do you think )?i am\b|\bmy (?:latitude|longitude|coordinates|location)$/u;

export const saveSite: Rule = (asked) => {
  if (says(asked, HOW_SAVE)) return { line: 'help site' };
  if (says(asked, WHERE_AM_I)) return { line: 'site' };
  return savingRule(asked) ?? isAtRule(asked) ?? iAmRule(asked);
};

const FROM_NOW_ON = /\b(?:from (?:now|here|today) on(?:wards?)?|from now|always|for good)\b/u;

const BACK =
  /^(?:please )?(?:(?:use|go|switch|change|move|set|take|put)(?: (?:it|me|my site|the site))?(?: back)?(?: to)?|back(?: to)?) (?:the |my |our )?(?:site )?(home|usual|normal|regular|old|first|other|default|club)(?:'?s)?(?: (?:site|place|one|spot|location))?(?: again| now| please)?$/u;

/** "go back to the home site": whether there is one of that name, the command says. */
const backRule: Rule = ({ plain }) => {
  const name = BACK.exec(plain)?.[1];
  return name === undefined ? null : { line: commandLine('site', 'use', { name }) };
};

const USE_NAME = /^use (?:the |my |our )?(\p{L}[\p{L}'-]*(?: \p{L}[\p{L}'-]*)?)$/u;

/** "use nans", a name that no list has: the command says which there are. */
const useUnknown = ({ plain, left }: Asked): Reading | null => {
  const name = USE_NAME.exec(plain)?.[1];
  const isName = name !== undefined && left.length > 0 && !name.split(' ').every(isLittle);
  return isName ? { line: commandLine('site', 'use', { name }) } : null;
};

const USES_PLACE = /^(?:use|(?:switch|go|change|move) (?:back )?to|back to) (?:the |my )?(?:site )?/u;

/** "use the hut": from now on; "use cork tonight": for that night alone; what is not saved is used once. */
const usePlace: Rule = (asked) => {
  const { place, targets, left, when } = asked;
  if (!says(asked, USES_PLACE) || targets.length > 0) return null;
  if (place === null) return useUnknown(asked);
  if (left.some((word) => word !== 'switch')) return null;
  const isForGood = says(asked, FROM_NOW_ON);
  const isOnce = !isForGood && (when.night !== null || when.hour !== null);
  const isSaved = asked.isPlaceSaved || isPrivateWord(place);
  if (isSaved && !isOnce) return { line: commandLine('site', 'use', { name: place }) };
  const read = nightLine('tonight', '', isForGood ? { ...asked, when: { ...when, night: null, hour: null } } : asked);
  const keep = commandLine('site', 'add', { name: 'my site', position: place });
  return isSaved ? read : { ...read, note: `Used this once. To keep it: ${keep}` };
};

export const useSite: Rule = (asked) => backRule(asked) ?? usePlace(asked);

const RENAME = /^rename (?:the |my |our )?(?:site )?(.+?) (?:to|as|into) (.+)$/u;
const REMOVE =
  /^(?:forget|delete|del|remove|drop)(?: (?:the|my|our))?(?: saved)?(?: (?:site|place))? (\p{L}[\p{L}'’-]*(?: [\p{L}\d'’-]+){0,2})$/u;

/** "forget swaffham", "rename the hut to shed": whether there is such a site, the command says. */
export const changeSite: Rule = ({ plain }) => {
  const [, before, after] = RENAME.exec(plain) ?? [];
  if (before !== undefined && after !== undefined)
    return { line: commandLine('site', 'rename', { name: before, to: after }) };
  const name = REMOVE.exec(plain)?.[1];
  const isName =
    name !== undefined &&
    !/\b(?:reminders?|alarms?)\b/u.test(name) &&
    (isPrivateWord(name) || name.split(' ').some((word) => !isLittle(word)));
  return isName ? { line: commandLine('site', 'remove', { name }) } : null;
};
