/** What people ask of the Sun itself, without looking at it: a sentence from knowledge/sun-facts.yaml. */
import path from 'node:path';
import { once } from '../../ground/once.js';
import { projectRoot } from '../../ground/project-root.js';
import type { Outcome } from '../../reply/reply.js';
import { readTopics, topicAmong } from './topics.js';

const facts = once(() => readTopics(path.join(projectRoot(), 'knowledge', 'sun-facts.yaml')));

const sights = once(() => readTopics(path.join(projectRoot(), 'knowledge', 'day-sights.yaml')));

/** @param text that comes near a harm; null where it may be one */
export const daySight = (text: string): Outcome | null =>
  topicAmong(sights(), text.toLowerCase(), { isTalkOfSun: true });

/** @param text that is known to be of no looking; null where none of the facts is asked */
export const sunFact = (text: string): Outcome | null => topicAmong(facts(), text.toLowerCase(), { isTalkOfSun: true });
