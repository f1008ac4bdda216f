/** What is kept about members and for how long, said once for the commands and the README. */
import { EVENT_DAYS, WALK_DAYS } from '../../reminders/purge-old.js';

export const KEPT_PERIODS = [
  'Sites, horizons and gear: until you remove them.',
  'Reminders: until they are said or cancelled; those for every evening until cancelled.',
  `Troubleshooting walks: ${WALK_DAYS} days after they were last touched.`,
  `The ids of messages already answered (no text): ${EVENT_DAYS} days.`,
  'Of walks, your newest 20.',
  'How often each cause was confirmed in a club: kept as counts, with no member in them. That yours was counted: to the end of the month.',
] as const;
