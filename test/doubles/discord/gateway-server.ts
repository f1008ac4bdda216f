/** The double's gateway, version 10: hello, identify, heartbeat, ready, resume, reconnect, invalid session, dispatch. */
import { randomBytes } from 'node:crypto';
import type { Server } from 'node:http';
import { GatewayCloseCodes, GatewayOpcodes } from 'discord-api-types/v10';
import { WebSocket, WebSocketServer } from 'ws';
import type { Misbehaviour } from './misbehaviour.js';
import { shardOf } from './snowflake.js';
import type { World } from './world.js';

interface Sent {
  readonly s: number;
  readonly t: string;
  readonly d: unknown;
}
interface Session {
  readonly id: string;
  readonly shard: readonly [number, number];
  socket: WebSocket | null;
  sequence: number;
  /** For resuming; bounded. */
  sent: Sent[];
  isValid: boolean;
}

export interface GatewayLog {
  readonly identifies: { readonly intents: number; readonly shard: readonly [number, number] }[];
  resumes: number;
  heartbeats: number;
}

export interface GatewayServer {
  readonly log: GatewayLog;
  /** To every session whose shard serves the server (direct messages: shard 0). */
  readonly dispatch: (name: string, guildId: string | null, data: unknown) => void;
  readonly dropSockets: (code?: number) => void;
  /** Opcode 7: please reconnect and resume. */
  readonly askToReconnect: () => void;
  /** Opcode 9. */
  readonly invalidateSessions: (mayResume: boolean) => void;
  readonly liveSessions: () => number;
  readonly close: () => void;
}

const REPLAYED = 500;

export const attachGateway = (
  server: Server,
  world: World,
  misbehaviour: Misbehaviour,
  options: { readonly heartbeatMs: number; readonly gatewayUrl: () => string },
): GatewayServer => {
  const sockets = new WebSocketServer({ server });
  // It says again what the server says of a port that is taken.
  sockets.on('error', () => undefined);
  const sessions = new Map<string, Session>();
  const log: GatewayLog = { identifies: [], resumes: 0, heartbeats: 0 };
  const send = (socket: WebSocket | null, message: object): void => {
    if (socket?.readyState === WebSocket.OPEN) socket.send(JSON.stringify({ s: null, t: null, d: null, ...message }));
  };
  const tell = (session: Session, t: string, d: unknown): void => {
    const event: Sent = { s: ++session.sequence, t, d };
    session.sent.push(event);
    if (session.sent.length > REPLAYED) session.sent.splice(0, session.sent.length - REPLAYED);
    send(session.socket, { op: GatewayOpcodes.Dispatch, ...event });
  };
  const live = (): Session[] => [...sessions.values()].filter(({ isValid }) => isValid);
  const serves = ({ shard: [id, count] }: Session, guildId: string | null): boolean =>
    (guildId === null ? 0 : shardOf(guildId, count)) === id;

  const guildPayload = (guildId: string): unknown => {
    const guild = world.guilds.get(guildId);
    return {
      id: guildId,
      name: guild?.name,
      owner_id: guild?.ownerId,
      unavailable: false,
      large: false,
      member_count: world.people.size,
      joined_at: new Date().toISOString(),
      channels: [...world.channels.values()]
        .filter((channel) => channel.guildId === guildId && channel.parentId === null)
        .map(({ id, name, type }, position) => ({
          id,
          name,
          type,
          position,
          permission_overwrites: [],
          guild_id: guildId,
        })),
      roles: [
        {
          id: guildId,
          name: '@everyone',
          permissions: '0',
          position: 0,
          color: 0,
          hoist: false,
          managed: false,
          mentionable: false,
          flags: 0,
        },
      ],
      members: [],
      threads: [],
      emojis: [],
      stickers: [],
      voice_states: [],
      presences: [],
      stage_instances: [],
      guild_scheduled_events: [],
      soundboard_sounds: [],
      features: [],
      afk_timeout: 300,
      default_message_notifications: 1,
      explicit_content_filter: 0,
      mfa_level: 0,
      nsfw_level: 0,
      premium_tier: 0,
      preferred_locale: 'en-GB',
      system_channel_flags: 0,
      verification_level: 0,
      premium_progress_bar_enabled: false,
    };
  };

  const identify = (
    socket: WebSocket,
    d: { token: string; intents: number; shard?: [number, number] },
  ): Session | null => {
    log.identifies.push({ intents: d.intents, shard: d.shard ?? [0, 1] });
    if (misbehaviour.closeIdentify !== null) {
      socket.close(misbehaviour.closeIdentify);
      return null;
    }
    if (d.token !== world.token) {
      socket.close(GatewayCloseCodes.AuthenticationFailed);
      return null;
    }
    const shard = d.shard ?? [0, 1];
    if (shard[0] >= shard[1]) {
      socket.close(GatewayCloseCodes.InvalidShard);
      return null;
    }
    const session: Session = {
      id: randomBytes(16).toString('hex'),
      shard,
      socket,
      sequence: 0,
      sent: [],
      isValid: true,
    };
    sessions.set(session.id, session);
    const served = [...world.guilds.values()].filter(({ hasBot, id }) => hasBot && serves(session, id));
    tell(session, 'READY', {
      v: 10,
      session_id: session.id,
      resume_gateway_url: options.gatewayUrl(),
      shard,
      user: {
        id: world.applicationId,
        username: 'pierhand',
        discriminator: '0',
        global_name: null,
        avatar: null,
        bot: true,
      },
      guilds: served.map(({ id }) => ({ id, unavailable: true })),
      application: { id: world.applicationId, flags: 0 },
    });
    for (const { id } of served) tell(session, 'GUILD_CREATE', guildPayload(id));
    return session;
  };

  const resume = (socket: WebSocket, d: { token: string; session_id: string; seq: number }): Session | null => {
    const session = sessions.get(d.session_id);
    if (misbehaviour.refuseResumes > 0 || session?.isValid !== true || d.token !== world.token) {
      if (misbehaviour.refuseResumes > 0) misbehaviour.refuseResumes--;
      if (session !== undefined) session.isValid = false;
      send(socket, { op: GatewayOpcodes.InvalidSession, d: false });
      return null;
    }
    log.resumes++;
    session.socket = socket;
    for (const event of session.sent.filter(({ s }) => s > d.seq))
      send(socket, { op: GatewayOpcodes.Dispatch, ...event });
    tell(session, 'RESUMED', {});
    return session;
  };

  sockets.on('connection', (socket) => {
    let session: Session | null = null;
    send(socket, { op: GatewayOpcodes.Hello, d: { heartbeat_interval: options.heartbeatMs } });
    socket.on('message', (data: Buffer) => {
      const { op, d } = JSON.parse(data.toString('utf8')) as { op: GatewayOpcodes; d: never };
      if (op === GatewayOpcodes.Heartbeat) {
        log.heartbeats++;
        if (!misbehaviour.withholdHeartbeatAcks) send(socket, { op: GatewayOpcodes.HeartbeatAck });
      } else if (op === GatewayOpcodes.Identify) {
        session = session === null ? identify(socket, d) : session;
      } else if (op === GatewayOpcodes.Resume) {
        session = resume(socket, d);
      } else if (op !== GatewayOpcodes.PresenceUpdate) {
        socket.close(GatewayCloseCodes.UnknownOpcode);
      }
    });
    socket.on('close', (code) => {
      if (session?.socket !== socket) return;
      session.socket = null;
      // A client that says goodbye cannot come back to the same session.
      if (code === 1000 || code === 1001) session.isValid = false;
    });
  });

  return {
    log,
    dispatch: (name, guildId, data) => {
      const times = misbehaviour.duplicateDispatches > 0 ? 2 : 1;
      if (times === 2) misbehaviour.duplicateDispatches--;
      for (const session of live().filter((candidate) => serves(candidate, guildId))) {
        for (let i = 0; i < times; i++) tell(session, name, data);
      }
    },
    dropSockets: (code) => {
      for (const socket of sockets.clients) {
        if (code === undefined) socket.terminate();
        else socket.close(code);
      }
    },
    askToReconnect: () => live().forEach(({ socket }) => send(socket, { op: GatewayOpcodes.Reconnect })),
    invalidateSessions: (mayResume) =>
      live().forEach((session) => {
        if (!mayResume) session.isValid = false;
        send(session.socket, { op: GatewayOpcodes.InvalidSession, d: mayResume });
      }),
    liveSessions: () => live().filter(({ socket }) => socket?.readyState === WebSocket.OPEN).length,
    close: () => {
      for (const socket of sockets.clients) socket.terminate();
      sockets.close();
    },
  };
};
