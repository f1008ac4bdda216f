/** How much one member, club or channel may keep. */
export const SITES_PER_OWNER = 20;
export const WALKS_PER_MEMBER = 20;
export const REMINDERS_PER_MEMBER = 20;
