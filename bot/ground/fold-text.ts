/** Text as a member types it, brought to the form that look-up compares: no case, accents, punctuation, Greek or superscripts. */

/** Longest text that a look-up reads at all; anything longer is no name. */
export const LONGEST_TEXT = 120;

const GREEK_LETTER_NAMES: ReadonlyMap<string, string> = new Map(
  Object.entries({
    α: 'alpha',
    β: 'beta',
    γ: 'gamma',
    δ: 'delta',
    ε: 'epsilon',
    ζ: 'zeta',
    η: 'eta',
    θ: 'theta',
    ι: 'iota',
    κ: 'kappa',
    λ: 'lambda',
    μ: 'mu',
    ν: 'nu',
    ξ: 'xi',
    ο: 'omicron',
    π: 'pi',
    ρ: 'rho',
    σ: 'sigma',
    ς: 'sigma',
    τ: 'tau',
    υ: 'upsilon',
    φ: 'phi',
    χ: 'chi',
    ψ: 'psi',
    ω: 'omega',
  }),
);

/** Without control, format and bidirectional characters; runs of space made one; trimmed. Safe to show once shortened. */
export const cleanText = (text: string): string => {
  return text
    .replace(/[\p{Cc}\p{Zs}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/[\p{Cf}\p{Cs}\p{Co}\p{Cn}]/gu, '')
    .trim();
};

/** What is asked, as follow-ups are held against forms: clean, in lower case, with straight apostrophes and no marks at its end. */
export const plainLine = (text: string): string =>
  cleanText(text)
    .replace(/[’‘`]/gu, "'")
    .toLowerCase()
    .replace(/[?!.\s]+$/u, '');

/** `cleanText`, at most `longest` characters with an ellipsis, and never a mention or markup: for quoting back to the asker. */
export const quotable = (text: string, longest = 60): string => {
  const clean = cleanText(text.slice(0, 4 * longest)).replace(/[@`*_~|<>[\]()\\]/g, '');
  const characters = [...clean];
  return characters.length > longest ? `${characters.slice(0, longest - 1).join('')}…` : clean;
};

/** Most names are plain; they are spared the slow part. */
const ASCII = /^[\0-\x7f]*$/;

/** Lower-case words of plain letters and digits: "α² Cap" → "alpha 2 cap", "Boötes" → "bootes", "Cat's Eye" → "cats eye". */
export const foldWords = (text: string): string => {
  if (ASCII.test(text))
    return text
      .toLowerCase()
      .replace(/['`]/g, '')
      .replace(/[^a-z0-9]+/g, ' ')
      .trim();
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}+/gu, '')
    .replace(/[α-ω]/g, (letter) => ` ${GREEK_LETTER_NAMES.get(letter) ?? letter} `)
    .replace(/['’‘ʼ`´]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
};

/** `foldWords` without its spaces: the key that names are stored under. */
export const foldKey = (text: string): string => {
  return foldWords(text).replaceAll(' ', '');
};

/** Lower case, with plain ASCII for the many minus signs, primes, quotation marks and degree signs that figures are written with. */
export const plainSigns = (text: string): string => {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[−–—‐‑‒]/g, '-')
    .replace(/[′’‘ʹ]/g, "'")
    .replace(/[″”“ʺ]/g, '"')
    .replace(/[º˚∘]/g, '°');
};

/** Words between white space; an empty text counts as one. */
export const wordCountOf = (text: string): number => text.trim().split(/\s+/u).length;
