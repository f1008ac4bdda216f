/** What was said in the page's one channel, and who may read which part of it; only the last of it is kept. */
import type { ShownAnswer } from './write-message.js';

export interface ShownQuestion {
  readonly kind: 'question';
  readonly from: string;
  readonly text: string;
}

export interface Message {
  readonly id: number;
  /** The ids of the members who may read it; null: all. */
  readonly readers: readonly string[] | null;
  readonly shown: ShownQuestion | ShownAnswer;
}

export interface Channel {
  /** Says something to all, or to some. */
  readonly say: (shown: Message['shown'], readers: Message['readers']) => void;
  /** What that member may read so far, then whatever comes, until the returned function is called. */
  readonly follow: (memberId: string, tell: (message: Message) => void) => () => void;
}

const KEPT_MESSAGES = 200;

export const createChannel = (): Channel => {
  const messages: Message[] = [];
  const followers = new Set<(message: Message) => void>();
  let lastId = 0;
  const mayRead = (memberId: string, { readers }: Message): boolean => readers === null || readers.includes(memberId);

  return {
    say: (shown, readers) => {
      const message: Message = { id: ++lastId, readers, shown };
      messages.push(message);
      if (messages.length > KEPT_MESSAGES) messages.shift();
      for (const tell of followers) tell(message);
    },
    follow: (memberId, tell) => {
      const tellIfReader = (message: Message): void => {
        if (mayRead(memberId, message)) tell(message);
      };
      messages.forEach(tellIfReader);
      followers.add(tellIfReader);
      return () => void followers.delete(tellIfReader);
    },
  };
};
