/** "And the new one?", "and the one after": another quarter of the Moon, or the next of what was asked about. */
import { eclipseKindSaid, saysContacts } from '../sentence/eclipse-kind.js';
import { takes, type ToldLine } from './told-line.js';

const QUARTER =
  /^(?:(?:for|on|at) )?(?:the )?(?:next )?(new|full|first|last|third)(?: quarter)?(?: moon| one| phase)?(?: then)?$/u;
const ONE_AFTER =
  /^(?:(?:what|when|which)(?:'s| is|s| about| comes?| will be)? )?(?:(?:the |any )?(?:ones?|next|another|following|second|other|1)(?: ones?)?(?: (?:after|following|from|then))?(?: (?:that|it|this|then))?(?: one)?|after(?:wards?)?(?: (?:that|it|this))?(?: one)?)$/u;

/** "What time should we go out for it", "and the Moon?" after what is coming: it stands in the same answer. */
const OF_THE_SAME =
  /^(?:and |so |ok )*(?:(?:at )?(?:what|which) (?:time|hour|night|day|date)|when|where|which way|how many|how high|is (?:it|that) worth|(?:can|could|will|would) (?:i|we|you) (?:see|watch|catch|view) (?:it|that|them)(?: from (?:here|my (?:house|garden|site|place)|home))?|(?:is|will) (?:it|that) (?:be )?(?:visible|seen)|what about the moon|(?:and )?(?:the|with the|is the) moon)\b(?!.*\b(?:rise|rises|sets?|phase|full|new)\b).{0,50}$/u;
/** "How much is covered", "will it go red": in the same answer as well. */
const OF_ITS_COURSE =
  /^(?:and |so |ok )*(?:how long(?: (?:does|will|is) (?:it|that)\b.*| (?:till?|until|before|to) (?:the )?(?:max\w*|peak|greatest|middle|end|start).*)|how (?:much|deep|far|big a bit)\b.*|(?:will|does|is) it (?:go|going to go|turn|be|get|become|a|the)? ?(?:red|dark|orange|copper\w*|total|full|partial|deep|complete\w*|all (?:of it|covered))\b.*|(?:what time|when)(?: is|s|'s)? (?:the )?(?:max\w*|peak|greatest|middle|mid eclipse|end|over|best bit)\b.*|(?:what time|when) (?:does|will) (?:it|that) (?:end|start|begin|finish|stop|peak|be over)\b.*)$/u;

export const ofTheSame = (before: ToldLine, plain: string): boolean => {
  const kind = before.values['kind'];
  const isOfEvent = before.command.name === 'ahead' && /^(?:showers|eclipses)$/u.test(kind ?? '');
  if (isOfEvent && kind === 'eclipses' && OF_ITS_COURSE.test(plain)) return true;
  return (
    isOfEvent && OF_THE_SAME.test(plain) && (/\b(?:it|them|that|those|they)\b/u.test(plain) || /\bmoon$/u.test(plain))
  );
};

/** @returns null where the words tell no such thing, or the line before had none */
export const nextOne = (before: ToldLine, plain: string): ToldLine | null => {
  const { later: _later, ...values } = before.values;
  const quarter = QUARTER.exec(plain)?.[1];
  if (before.command.name === 'moon' && quarter !== undefined)
    return { ...before, values: { ...values, next: quarter === 'third' ? 'last' : quarter } };
  const isOfOne = before.command.name === 'ahead' || values['next'] !== undefined;
  if (!takes(before, 'later') || !isOfOne || !ONE_AFTER.test(plain)) return null;
  return { ...before, values: { ...values, later: String(Number(before.values['later'] ?? 0) + 1) } };
};

/** "And the solar one", "any total ones", "when is C2", after an eclipse was told of. */
export const eclipseMeant = (before: ToldLine, plain: string): ToldLine | null => {
  if (before.command.name !== 'ahead' || !/^eclipses?$/u.test(before.values['kind'] ?? '')) return null;
  const { later: _later, first: _first, total, shape, about, ...values } = before.values;
  const kind = eclipseKindSaid(plain);
  if (kind !== null) {
    const kept = { ...(total === undefined ? {} : { total }), ...(shape === undefined ? {} : { shape }) };
    // Of the other body any is meant; of a shape, of what was spoken of.
    const shaped = kind.shape ?? (kind.about === null ? kept : {});
    const of = kind.about ?? about;
    return { ...before, values: { ...values, ...shaped, ...(of === undefined ? {} : { about: of }), first: 'next' } };
  }
  return saysContacts(plain) && about !== 'Moon'
    ? { ...before, values: { ...before.values, about: 'Sun', first: 'contacts' } }
    : null;
};
