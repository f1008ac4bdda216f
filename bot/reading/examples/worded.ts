/** What a clause must name itself before its likeness alone may say so: others said such things beside the word, and it is not there. */
import { tableOf } from '../../ground/table-of.js';
import type { Clause } from './clauses.js';

const CHANGE =
  /^(?:new|newer|another|different|other|since|chang\w+|swap\w+|replac\w+|upgrad\w+|updat\w+|reinstall\w*|install\w*|mov\w+|switch\w+|bought|fitted|added|after|instead|borrow\w*|got|took|taken|clean\w*|patch\w*|flashed|firmware|version)$/u;
const NEW_COMPUTER =
  /^(?:new|newer|another|different|other|since|chang\w+|swap\w+|replac\w+|upgrad\w+|updat\w+|reinstall\w*|mov\w+|switch\w+|bought|instead|fresh|ssd)$/u;
const GUARD =
  /^(?:antivirus|anti|virus|defender|security|suite|protection|quarantine|quarantined|firewall|malware|history|blocked|scanner)$/u;

const NEEDS = tableOf({
  'changed-last': CHANGE,
  'changed-last.computer': NEW_COMPUTER,
  'suite-log': GUARD,
});

/** "No error, no timeout, nothing in the log": what is listed as not there. */
const LISTED_AS_NONE = /\b(?:no|not an?|without) (?:errors?|time ?outs?|messages?|warnings?|answers?)\b/u;
const OF_MESSAGE = 'message';

const wordsOf = (clauses: readonly Clause[]): readonly string[] =>
  clauses.flatMap(({ sentence, from, to }) => sentence.tokens.slice(from, to).map(({ word }) => word));

/** Whether the clauses name what the answer cannot be told without, and do not list it as absent. */
export const isWorded = (check: string, answer: string, clauses: readonly Clause[]): boolean => {
  const needs = NEEDS.get(`${check}.${answer}`) ?? NEEDS.get(check);
  if (needs !== undefined) return wordsOf(clauses).some((word) => needs.test(word));
  return check !== OF_MESSAGE || answer === 'connects' || !LISTED_AS_NONE.test(wordsOf(clauses).join(' '));
};
