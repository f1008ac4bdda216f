/** When a dome may be opened or a tube uncapped, with no target named: the Sun is what forbids it, so the answer is where the Sun stands. */
import { commandLine } from '../question-parts.js';
import type { Known, Reading } from './asked.js';
import { hourOf } from './sun-hour.js';
import { partsOf } from './sun-parts.js';

const OPENS =
  /\b(?:open(?: up)? (?:the |my |our )?(?:dome|roof|shutters?|slit|observatory|obs|tube|scope|telescope)|(?:uncap|uncover) (?:the |my |our )?(?:\w+ )?(?:scope|telescope|tube|dob\w*|optics|mirror|mount|it)|(?:take|get) (?:the |my |our )?(?:dust |lens |end )?(?:caps?|covers?|lid) off|(?:remove|take off) (?:the |my |our )?(?:dust |lens |end )?(?:caps?|covers?|lid))\b/u;
const ASKS = /\b(?:when|what time|safe\w*|can|may|could|should|ok|okay|allowed|how (?:soon|early|long)|already|yet)\b/u;
const ASKS_WHEN = /\b(?:when|what time|how (?:soon|early|long))\b/u;
/** Other questions: reminders, what is stuck, rain. */
const OTHERS =
  /\b(?:remind\w*|warn|alert|wake|ping|stuck|jam\w*|won'?t|rain\w*|clouds?|cloudy|weather|wind\w*|dew|cool\w*|battery|finder|eyepiece|guide)\b/u;

export const openingUp = (typed: string, known: Known): Reading | null => {
  const plain = typed.toLowerCase();
  if (!OPENS.test(plain) || !ASKS.test(plain) || OTHERS.test(plain)) return null;
  const parts = partsOf(typed, known);
  if (parts.named.length > 0) return null;
  const hour = hourOf(plain, parts);
  const at = hour === 'now' ? undefined : hour;
  const site = parts.site ?? undefined;
  // It is the one that warns where nobody knows the site.
  if (site === undefined && known.usual == null) return { line: commandLine('sun', 'Sun', { at }) };
  return at === undefined && ASKS_WHEN.test(plain)
    ? {
        line: commandLine('dark', '', { first: 'sunset', site }),
        note: 'Caps and dome stay shut until the Sun has set.',
      }
    : { line: commandLine('altitude', 'Sun', { at, site }) };
};
