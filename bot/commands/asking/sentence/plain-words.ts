/** A sentence's words before they are read: without courtesies, short words in full, the place where places stand. */

/** The words without the marks and the courtesies around them. */
export const withoutCourtesies = (words: string): string =>
  words
    .replace(/[’‘`]/gu, "'")
    .replace(/[?!.]+$/u, (end) => (/^\?+$/u.test(words) ? end : ''))
    .replace(
      /^(?:(?:good (?:morning|afternoon|evening|day)(?: (?:all|everyone|everybody|folks))?(?=,)|please|so|and|hey|hiya|hi|hello|ok|pierhand|pier|tell me(?! when| once| as soon| before| (?:a|an|the|one|two) \w+ before)|could you (?:please )?tell me|can you (?:please )?tell me|do you know|i wonder|just wondering|quick question|(?:my|our|the) (?:son|daughter|kids?|child|children|boy|girl|wife|husband|mum|dad|grand\w+|pupils?|students?|class|friend|neighbou?r|little one|\d year old) (?:asks?|asked|is asking|wants? to know|wonders?)(?: if| whether)?|what about|how about)[,:]?\s+)+(?=\S)/iu,
      '',
    )
    .trim();

/** The Moon as a measure: half a degree, common practice. */
const MOON_WIDTH =
  /\b(half )?(?:a |an |the |one |1 )?(?:full )?moon(?:'s|s)?(?:'|’)? (?:width|diameter|breadth|disc|disk)s?\b|\b(?:the )?width of (?:the |a )?(?:full )?moon\b/giu;

/** "The core of the Milky Way": its name ends in a word that ends none. */
const OF_THE_GALAXY =
  /\b(?:core|cent(?:re|er)|heart|middle|bulge) of (?:the |our )?(?:milky ?way|galaxy)\b|\bmilky ?way'?s (?:core|cent(?:re|er)|heart)\b/giu;

/** "Anything 4 my daughter". */
const FOR_SOMEBODY =
  /\b(anything|something|things?|stuff|targets?|objects?|one|good|easy|nice|ideas?) 4 (?=(?:my|our|the|an?|kids?|children|me|us)\b)/giu;
/** "Shes 6", "he's 5": how old, and no hour. */
const AGED =
  /(?<=\b(?:son|daughter|kid|child|boy|girl|niece|nephew|grand\w+)),? (?:and )?(?:she|he)(?:'?s| is) (\d{1,2})(?: (?:years? old|yo))?(?![\d:.]| ?(?:mm|cm|am|pm|inch|deg))/giu;

/** Short words that would be names elsewhere: "ra dec" is no star, a "new mon" no constellation. */
export const inFull = (words: string): string =>
  words
    .replace(/\bra(?:\s*(?:\/|,|&|n|and)\s*|\s+)dec\b/giu, 'coordinates')
    .replace(MOON_WIDTH, (_, half: string | undefined) => (half === undefined ? '30 arcmin' : '15 arcmin'))
    .replace(/\b(new|full) mon\b/giu, '$1 moon')
    .replace(/\b(north|south)(?:ern)? pole(?: (?:of|in) (?:the|my|our) sky)?\b(?! ?star)/giu, '$1 celestial pole')
    .replace(/\bhow much time\b/giu, 'how long')
    .replace(FOR_SOMEBODY, '$1 for ')
    .replace(AGED, ' aged $1')
    .replace(/\b(\d{1,2}) ?(?:yo|y\/o|yrs? olds?)\b/giu, '$1 year old')
    .replace(
      /^(?:is|was|will) (?:it|this|that)(?: be)? an? super ?moon$|^is (?:the )?moon (?:any )?(?:bigger|larger|closer)(?= |$)/giu,
      'how big is the moon',
    )
    .replace(/\bis (?:the |this )?(?:next |full )*moon (?:a |going to be a )super ?moon\b/giu, 'how big is the moon')
    .replace(/\bconj\b\.?/giu, 'conjunction')
    .replace(/\bmoon[- ](?=(?:mercury|venus|mars|jupiter|saturn)\b)/giu, 'moon and ')
    .replace(/\bmoon[- ]free\b/giu, 'moonless')
    // The figure says it better.
    .replace(
      /\b(?:from|in|under) (?:a |the |my |our )?(?:big |small )?(?:town|city|suburbs?|village|country(?:side)?),? (?:with |under |at |in |sky )?(?=bortle \d)/giu,
      'from ',
    )
    .replace(/\blit\b/giu, 'illuminated')
    .replace(/\b(\d{1,2}) o ?clock\b/giu, "$1 o'clock")
    .replace(OF_THE_GALAXY, 'galactic centre')
    // The one that shows what the other does not; both stand together.
    .replace(/\bmagellanic clouds\b/giu, 'large magellanic cloud')
    .replace(/\bmon (?=rises?\b|sets?\b)/giu, 'moon ');

const STANDS_AT =
  /^(?:i'?m|i am|we'?re|we are)(?: now| here| out| currently| staying| up| down)* (?:at|in|near|over at) (.{2,50}?),? (?=(?:what|what's|whats|how|how's|when|where|which|is|are|can|could|will|does|do|show|whens|anything)\b)(.+)$/iu;

/** "im at my nans in whitby how dark will it be": the place goes where places stand, the town where one is said. */
export const placeAtEnd = (words: string): string => {
  const [, at = '', question = ''] = STANDS_AT.exec(words) ?? [];
  const town = /^.*\b(?:in|near) (.+)$/iu.exec(at)?.[1] ?? at;
  return question === '' || /\b(?:garden|field|dark)$/iu.test(at)
    ? words
    : `${question.replace(/\?+$/u, '')} from ${town}`;
};

/** Behind a place it is no part of its name: "from Auckland, on holiday". */
const ON_HOLIDAY =
  /,? (?:(?:while|whilst|as|when) )?(?:(?:i'?m|we'?re|i am|we are) )?on (?:(?:my|our|a) )?(?:hols?|holidays?|vacation|break)(?=\s*(?:[.,;!?]|$))/giu;
export const withoutHoliday = (words: string): string => words.replace(ON_HOLIDAY, '');
