/** Sentences made of templates and words, hundreds a kind: what is read of one must be read of all, whatever fills the gaps. */
import { readText } from '../../../bot/reading/index.js';
import { shippedModel } from '../../shipped.js';

const { reading } = shippedModel();

export const factsOf = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

/** Gap name → what fills it. */
type Fillings = Readonly<Record<string, readonly string[]>>;

/** Every template with every filling of its `{gaps}`; in a template the same gap has the same filling throughout. */
export const everyWay = (templates: readonly string[], fillings: Fillings): readonly string[] =>
  templates.flatMap((template) => {
    const gaps = [...new Set([...template.matchAll(/\{(\w+)\}/gu)].map(([, gap]) => gap ?? ''))];
    return gaps.reduce<readonly string[]>(
      (texts, gap) => texts.flatMap((text) => (fillings[gap] ?? []).map((word) => text.replaceAll(`{${gap}}`, word))),
      [template],
    );
  });

/** Of many, so many spread evenly over the whole: always the same ones. */
export const spread = <One>(all: readonly One[], most: number): readonly One[] =>
  all.length <= most ? all : Array.from({ length: most }, (_, i) => all[Math.floor((i * all.length) / most)] as One);

interface Expected {
  /** Each `check.answer`, of which `a|b` either. */
  readonly read?: readonly string[];
  readonly not?: readonly string[];
}

/** What is amiss, a line each: the text, what was read of it, and what should have been. */
export const amiss = (texts: readonly string[], { read = [], not = [] }: Expected): readonly string[] =>
  texts.flatMap((text) => {
    const facts = factsOf(text);
    const missing = read.filter((one) => !one.split('|').some((fact) => facts.includes(fact)));
    const unwanted = facts.filter((fact) => not.some((one) => fact === one || fact.startsWith(`${one}.`)));
    return missing.length + unwanted.length === 0
      ? []
      : [`${text}\n    read: ${facts.join(' ')}; missing: ${missing.join(' ')}; unwanted: ${unwanted.join(' ')}`];
  });
