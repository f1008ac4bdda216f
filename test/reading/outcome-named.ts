/** What words say of a remedy outright, as a walk takes it. */
import { outcomeNamed } from '../../bot/commands/triage/told-at-card.js';
import { outcomeSaid, type Vocabulary } from '../../bot/reading/index.js';

export const remedyOutcome = (reading: Vocabulary, text: string) => outcomeNamed(outcomeSaid(reading, text));
