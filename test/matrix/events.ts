/** Events for tests, as the homeserver gives them. */
import type { Content, MatrixEvent } from '../../bot/platforms/matrix/answer/matrix-event.js';

export const BOT = '@pierhand:fenwold.test';
export const ODALYS = '@odalys:fenwold.test';
export const TAMSIN = '@tamsin:example.org';
/** 2026-11-25 18:00 UTC. */
export const NOW = Date.UTC(2026, 10, 25, 18);

let serial = 0;

export const event = (type: string, content: Content, more: Partial<MatrixEvent> = {}): MatrixEvent => ({
  type,
  content,
  event_id: `$event-${++serial}`,
  sender: ODALYS,
  origin_server_ts: NOW,
  ...more,
});

export const said = (body: string, more: Content = {}, sender = ODALYS): MatrixEvent =>
  event('m.room.message', { msgtype: 'm.text', body, ...more }, { sender });

export const state = (type: string, stateKey: string, content: Content, sender = ODALYS): MatrixEvent =>
  event(type, content, { state_key: stateKey, sender });
