/** Lines that come at once are one paste: they are said together, not refused one by one. */

/**
 * `own`: stands by itself (a number, a command with its options); `opens`: a command that takes pasted text; `asks`: a short question,
 * request or answer in plain words; else `words`.
 */
export type LineKind = 'own' | 'opens' | 'asks' | 'words';

export interface PasteGatherer {
  readonly push: (line: string) => void;
  /** Says what is held back, at once. */
  readonly flush: () => void;
}

interface Gathering {
  readonly say: (text: string) => void;
  readonly kindOf: (line: string) => LineKind;
  /** At a terminal a paste may follow a command on its line and hold a question; from a pipe each of these stands by itself. */
  readonly isTerminal: boolean;
}

/** Longer than a terminal takes between the lines of one paste, shorter than a person between two. */
const TOGETHER_WITHIN_MS = 50;

export const gatherPastes = ({ say, kindOf, isTerminal }: Gathering): PasteGatherer => {
  let held: string[] = [];
  let timer: NodeJS.Timeout | undefined;

  const flush = (): void => {
    clearTimeout(timer);
    const text = held.join('\n');
    held = [];
    if (text !== '') say(text);
  };

  const holds = (line: string): boolean => {
    const kind = kindOf(line);
    if (kind === 'own') return false;
    return kind === 'words' || isTerminal;
  };

  return {
    flush,
    push: (line) => {
      // Inside a paste, only a number or a whole command ends it; an empty line belongs to it.
      if (held.length > 0 ? line.trim() === '' || holds(line) : line.trim() !== '' && holds(line)) {
        held.push(line);
        clearTimeout(timer);
        timer = setTimeout(flush, TOGETHER_WITHIN_MS);
        return;
      }
      flush();
      say(line);
    },
  };
};
