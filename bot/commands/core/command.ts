/** The one declaration of a command, from which every platform's form of it is made. */
import * as z from 'zod';
import type { Audience, Choice } from '../../ground/problem.js';
import type { Catalogue } from '../../catalogue/index.js';
import type { PlatformName } from '../../ground/platform-name.js';
import type { PictureReader } from '../../pictures/picture-reader.js';
import type { Places } from '../../places/index.js';
import type { Store } from '../../store/store.js';
import type { TriageModel } from '../../triage/index.js';
import type { Outcome } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import { isMemberFile, type MemberFile } from '../../ground/member-file.js';
import type { Privacy } from './privacy.js';
import type { Form } from './form.js';

/** What an option's value is about; platforms ask `completeOption` for suggestions of that kind. */
export type CompletionKind = 'target' | 'site' | 'place' | 'command' | 'time' | 'date' | 'own';

export interface OptionSpec<T = unknown> {
  readonly type: 'text' | 'number' | 'integer' | 'choice' | 'flag' | 'member' | 'file';
  /** 1–100 characters, shown by Discord and `help`. */
  readonly description: string;
  readonly required: boolean;
  readonly choices?: readonly string[];
  readonly min?: number;
  readonly max?: number;
  readonly maxLength?: number;
  readonly complete?: CompletionKind;
  readonly schema: z.ZodType<T>;
}

interface TextHints {
  readonly maxLength?: number;
  readonly complete?: CompletionKind;
}
interface NumberHints {
  readonly min: number;
  readonly max: number;
}

const boundedText = (maxLength: number) => z.string().trim().min(1).max(maxLength);

/** Text as typed; default at most 200 characters. */
export const text = (description: string, hints: TextHints = {}): OptionSpec<string> => ({
  type: 'text',
  description,
  required: true,
  maxLength: hints.maxLength ?? 200,
  ...hints,
  schema: boundedText(hints.maxLength ?? 200),
});
export const number = (description: string, hints: NumberHints): OptionSpec<number> => ({
  type: 'number',
  description,
  required: true,
  ...hints,
  schema: z.coerce.number().min(hints.min).max(hints.max),
});
export const integer = (description: string, hints: NumberHints): OptionSpec<number> => ({
  type: 'integer',
  description,
  required: true,
  ...hints,
  schema: z.coerce.number().int().min(hints.min).max(hints.max),
});
/**
 * The choice a word means, or undefined: itself, a plural ("galaxies"), another word for it (`also`, in lower case), or a
 * beginning of three letters or more that only one choice has ("globular").
 */
const choiceMeant = (
  typed: string,
  choices: readonly string[],
  also: Readonly<Record<string, string>>,
): string | undefined => {
  const word = typed.trim().toLowerCase().replace(/\s+/gu, '-');
  const forms = [word, word.replace(/s$/u, ''), word.replace(/ies$/u, 'y'), word.replace(/ae$/u, 'a')];
  const named = forms.find((form) => choices.includes(form));
  if (named !== undefined) return named;
  const other = forms.find((form) => Object.hasOwn(also, form));
  if (other !== undefined) return also[other];
  const begun = choices.filter((choice) => word.length >= 3 && forms.some((form) => choice.startsWith(form)));
  return begun.length === 1 ? begun[0] : undefined;
};

/** One of a few words; case, plurals and short forms are forgiven, and other words for them by `also`. At most 25 (Discord's limit). */
export const choice = <const C extends readonly string[]>(
  description: string,
  choices: C,
  also: Readonly<Record<string, C[number]>> = {},
): OptionSpec<C[number]> => ({
  type: 'choice',
  description,
  required: true,
  choices,
  schema: z
    .string()
    .transform((typed) => choiceMeant(typed, choices, also) ?? typed)
    .pipe(z.enum(choices as unknown as readonly [string, ...string[]])),
});
export const flag = (description: string): OptionSpec<boolean> => ({
  type: 'flag',
  description,
  required: true,
  schema: z.union([z.boolean(), z.stringbool()]),
});
/** Another member: the platform turns its mention into the member's id ("discord:123", "matrix:@x:y", "console:name"). */
export const member = (description: string): OptionSpec<string> => ({
  type: 'member',
  description,
  required: true,
  maxLength: 255,
  schema: boundedText(255),
});
/** A file or picture that comes with the question. Only a platform makes one: words typed in its place are refused. */
export const file = (description: string): OptionSpec<MemberFile> => ({
  type: 'file',
  description,
  required: true,
  schema: z.custom<MemberFile>(isMemberFile),
});
/** The same option, not required. */
export const optional = <T>(spec: OptionSpec<T>): OptionSpec<T | undefined> => ({
  ...spec,
  required: false,
  schema: spec.schema.optional(),
});

export type OptionValues<O extends Record<string, OptionSpec>> = {
  readonly [K in keyof O]: O[K] extends OptionSpec<infer T> ? T : never;
};

/** Who asks, and from where. Ids carry their platform: "discord:123", "matrix:@tamsin:example.org", "console:local". */
export interface Asker {
  readonly platform: PlatformName;
  readonly memberId: string;
  /** For "who said what"; never trusted, bounded by the platform. */
  readonly displayName: string;
  /** The server, or room; in direct messages the member's own id. */
  readonly clubId: string;
  /** Where answers and reminders go. */
  readonly channelId: string;
  /** May change the club's settings (Manage Server on Discord, the room's power level on Matrix, always on the console). */
  readonly isManager: boolean;
  /** True where nobody but the asker reads the answer (direct message, console). */
  readonly isPrivate: boolean;
}

export interface Request<V> {
  readonly options: V;
  readonly asker: Asker;
  /** Remembers whether a member's own row was used; resolving a site marks it, and so does the store a command is given. */
  readonly privacy: Privacy;
  /** The instant the question was asked. Commands have no other clock. */
  readonly nowUtcMs: UtcMs;
}

export interface Command<O extends Record<string, OptionSpec> = Record<string, OptionSpec>> {
  /** 1–32 lower-case characters. */
  readonly name: string;
  /** 1–100 characters. */
  readonly summary: string;
  readonly options: O;
  /** The option that words before the first `name:` fill; default: the first required one. */
  readonly bare?: keyof O & string;
  /**
   * The bare option takes pasted text: in it, `word:` that is no option and quotes that never close stay as they are, and
   * an option is one only where its value follows without a space.
   */
  readonly freeText?: true;
  /** Words after its name by which it is a sentence rather than options: "remind me when …". Its own reading is tried after the readers'. */
  readonly sentence?: RegExp;
  /** What choices of this command's replies may open, by name (1–10 lower-case characters). */
  readonly forms?: Readonly<Record<string, Form>>;
  /** Lines that work as they stand, in the text grammar; the first is shown by `help`. */
  readonly examples: readonly string[];
  /** `manager`: only those who may change the club's settings. */
  readonly access?: 'everyone' | 'manager';
  /** Suggestions for options whose `complete` is 'own'. */
  readonly completeOwn?: (
    deps: Deps,
    optionName: string,
    partial: string,
    asker: Asker,
  ) => Promise<readonly Completion[]>;
  readonly run: (deps: Deps, request: Request<OptionValues<O>>) => Promise<Outcome>;
}

export interface Completion {
  /** ≤ 100 characters, what the member sees. */
  readonly label: string;
  /** ≤ 100 characters, what is sent when picked. */
  readonly value: string;
}

/** Keeps the option types inside one declaration and forgets them for the list of all commands. */
export const defineCommand = <O extends Record<string, OptionSpec>>(command: Command<O>): Command =>
  command as unknown as Command;

/** Who asked what and how it was answered, by ids alone: no words, no place. */
export interface AnsweredLine {
  readonly command: string;
  readonly outcome: string;
  readonly audience: Audience;
  readonly memberId: string;
  readonly clubId: string;
  readonly channelId: string;
}

/** What commands are given to work with; made once by the composition root, replaced piecewise by tests. */
export interface Deps {
  /** Told of every answer; for the operator's log. */
  readonly onAnswered?: (line: AnsweredLine) => void;
  readonly catalogue: Catalogue;
  /** Loaded on first use. */
  readonly places: () => Places;
  readonly store: Store;
  readonly triage: () => TriageModel;
  /** Reads the text in members' pictures. */
  readonly pictures: PictureReader;
  /** The club's site as the operator set it (`PIERHAND_SITE`), in the site grammar. */
  readonly clubSiteText: string | null;
  /** A club may widen these, never narrow them. */
  readonly sunLimits: { readonly dangerDeg: number; readonly cautionDeg: number };
  /** The whole list, for `help`. */
  readonly commands: readonly Command[];
  /** Asked in order about text that is no command; absent: nobody. */
  readonly readers?: readonly WordsReader[];
}

/** What a member said, as it came: at most PASTE_LIMIT characters. */
export interface SaidWords extends Omit<Request<unknown>, 'options'> {
  readonly text: string;
  /** The same for all readers that are asked about these words: what one has worked out is kept by it for the next. */
  readonly shared: object;
}

/** The command line that was meant; it is run as if it had been typed. */
export interface LineRead {
  readonly line: string;
  /** Stands under the answer: how the words were taken. */
  readonly note?: string;
  /** Stands before the answer, and keeps it from being called good: it may not be for what was meant. */
  readonly unsure?: string;
  /** The member's own line, its first word mended: it may be a sentence that begins with a command's name by chance. */
  readonly isTyped?: boolean;
  /** Of what was answered just before: the picture and the facts of that answer are not shown again. */
  readonly isBrief?: boolean;
}

export type WordsRead = LineRead | { readonly outcome: Outcome };

/** Several requests in one line, each with its words, and the words of those that are too many. */
export interface SeveralRead {
  readonly parts: readonly { readonly words: string; readonly read: WordsRead }[];
  readonly left: readonly string[];
}

/** A question that waits for this asker, put again under an answer to something else. */
export interface StandsAgain {
  /** One line: what it waits for. */
  readonly note: string;
  /** To its question and its list, whose numbers would be others under another answer. */
  readonly back: Choice;
}

export interface WordsReader {
  /** For the log; that of the command whose questions it reads the answers to. */
  readonly name: string;
  /** Asked as well about words that begin with a command's name by chance ("moon rise tomorrow") and that it could not read. */
  readonly mendsCommands?: boolean;
  /** Asked before a command of its name runs on a sentence, unless that keeps what it is told. */
  readonly beforeCommands?: true;
  /** What it takes is said to a walk: no question of the sky is followed any more. */
  readonly isOfWalk?: true;
  /** Null: not for this reader. What it rejects with goes to the log, and the next one is asked. */
  readonly read: (deps: Deps, said: SaidWords) => Promise<WordsRead | SeveralRead | null>;
  /** What still waits for the asker's words once something else was answered; null: nothing. */
  readonly standsAgain?: (
    deps: Deps,
    ask: { readonly asker: Asker; readonly nowUtcMs: UtcMs },
  ) => Promise<StandsAgain | null>;
}
