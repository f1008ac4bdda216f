/** "My phone won't connect, the tablet does": of two of the kind the one that fails is in hand, and the other is another computer. */
import type { Judged } from './examples/likeness.js';
import type { ReadFact, Understood } from './reading.js';

const PHONE = /\b(?:phone|iphone|smartphone|mobile|handy)(?:['\u2019]?s)?\b/iu;
const TABLET = /\b(?:tablet|ipad|tab)(?:['\u2019]?s)?\b/iu;
const OTHERS_PHONE =
  /\b(?:other|another|second|old|wife['\u2019]?s|husband['\u2019]?s|son['\u2019]?s|daughter['\u2019]?s|friend['\u2019]?s|mate['\u2019]?s|partner['\u2019]?s|her|his) (?:old |other )?(?:phone|iphone|tablet|ipad)\b/iu;
const OWN_PHONE = /\b(?:my|our|this|new|own) (?:new |own )?(?:phone|iphone|tablet|ipad)\b/iu;
const COMPUTER =
  /\b(?:laptops?|computers?|pcs?|notebooks?|netbook|macbook|mac|imac|windows|linux|ubuntu|macos|desktop|raspberry|machine)\b/iu;
const LABEL = 'another phone or tablet reaches it';

const isOfTwo = (text: string): boolean =>
  !COMPUTER.test(text) &&
  ((PHONE.test(text) && TABLET.test(text)) || (OTHERS_PHONE.test(text) && OWN_PHONE.test(text)));

export const withPhoneInHand = (text: string, judged: Judged): Judged => {
  const reached = judged.facts.find(({ what, answer }) => what === 'works-with-phone' && answer === 'works');
  if (reached === undefined || !isOfTwo(text)) return judged;
  const isOther = ({ what }: ReadFact): boolean => what !== 'works-with-phone' && what !== 'other-computer';
  const another: ReadFact = { ...reached, what: 'other-computer' };
  const isTold = judged.facts.some(({ what }) => what === 'system');
  const phone: ReadFact = { ...reached, what: 'system', answer: 'phone', sureness: 0.85 };
  const added: readonly Understood[] = [
    { fact: another, label: LABEL },
    ...(isTold ? [] : [{ fact: phone, label: 'a phone or tablet' }]),
  ];
  return {
    facts: [...judged.facts.filter(isOther), ...added.map(({ fact }) => fact)],
    understood: [...judged.understood.filter(({ fact }) => isOther(fact)), ...added],
    perhaps: judged.perhaps.filter(isOther),
  };
};
