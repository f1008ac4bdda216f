/** Local dates and times in words: 24-hour clock, the zone named. */
import type { LocalDate } from './time-resolution.js';

/** "23:40 MST"; where the zone has no English abbreviation, its offset: "23:40 UTC+5:30". */
export function formatLocalTime(utcMs: number, zone: string): string { return `${utcMs} ${zone}`; }
/** "23:40". */
export function formatClock(utcMs: number, zone: string): string { return `${utcMs} ${zone}`; }
/** "MST" or "UTC+5:30". */
export function zoneName(utcMs: number, zone: string): string { return `${utcMs} ${zone}`; }
/** "Wed 25 Nov 2026". */
export function formatLocalDate(utcMs: number, zone: string): string { return `${utcMs} ${zone}`; }
/** "Wed 25 Nov 2026, 23:40 MST". */
export function formatLocalDateTime(utcMs: number, zone: string): string { return `${utcMs} ${zone}`; }
/** "Wed 25 Nov 2026" of a date that stands alone. */
export function formatDate(date: LocalDate): string { return `${date.year}`; }
/** The date that the clocks of `zone` show at an instant. */
export function localDateAt(utcMs: number, zone: string): LocalDate { return { year: utcMs, month: zone.length, day: 1 }; }
