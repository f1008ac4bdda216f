/** What people ask of the Sun itself, without looking at it, and what else is seen by day: sentences from knowledge/sun-facts.yaml and day-sights.yaml. */
import type { Outcome } from '../../reply/reply.js';
import { shippedTopics, topicAmong, type Topic } from './topics.js';

const told = (topics: () => readonly Topic[]) => (text: string) =>
  topicAmong(topics(), text.toLowerCase(), { isTalkOfSun: true });

/** @param text that comes near a harm; null where it may be one */
export const daySight: (text: string) => Outcome | null = told(shippedTopics('day-sights'));

/** @param text that is known to be of no looking; null where none of the facts is asked */
export const sunFact: (text: string) => Outcome | null = told(shippedTopics('sun-facts'));
