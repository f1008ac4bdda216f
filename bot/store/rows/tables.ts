/** The rows of every table as they stand after the last migration; times are whole UTC milliseconds, flags 0 or 1, JSON is text. */
import type { SiteSky } from '../store.js';

export interface SiteRow {
  owner_kind: 'member' | 'club';
  owner_id: string;
  name_key: string;
  name: string;
  latitude_deg: number;
  longitude_deg: number;
  elevation_m: number;
  zone: string;
  horizon: string | null;
  sky: SiteSky | null;
  is_default: number;
}

export interface GearRow {
  member_id: string;
  mount: string | null;
  connection: string | null;
  system: string | null;
  primary_deg_per_s: number | null;
  secondary_deg_per_s: number | null;
  east_limit_deg: number | null;
  west_limit_deg: number | null;
  aperture_mm: number | null;
}

export interface WalkRow {
  id: string;
  club_id: string;
  member_id: string;
  helper_id: string | null;
  platform: string;
  channel_id: string;
  state: string;
  updated_utc_ms: number;
  ended_utc_ms: number | null;
  awaits_member: number;
  asked_helper_id: string | null;
}

export interface OutcomeRow {
  club_id: string;
  fault_id: string;
  times: number;
}

/** That a member's cause was counted; `month` as "2026-11". */
export interface OutcomeMarkRow {
  member_id: string;
  club_id: string;
  fault_id: string;
  month: string;
}

export interface ReminderRow {
  id: string;
  /** Empty once the member who set a channel's reminder was forgotten. */
  member_id: string;
  club_id: string;
  platform: string;
  channel_id: string;
  said_to: 'member' | 'channel';
  kind: string;
  due_utc_ms: number;
  stale_utc_ms: number | null;
  repeat: string | null;
  text: string;
  claimant: string | null;
  lease_utc_ms: number | null;
  /** How often it was claimed since it came due. */
  attempts: number;
  not_before_utc_ms: number | null;
}

export interface NoteRow {
  key: string;
  value: string;
}

export interface EventRow {
  key: string;
  claimed_utc_ms: number;
  answered: number;
}

export interface Tables {
  sites: SiteRow;
  gear: GearRow;
  walks: WalkRow;
  outcomes: OutcomeRow;
  outcome_marks: OutcomeMarkRow;
  reminders: ReminderRow;
  notes: NoteRow;
  events: EventRow;
}
