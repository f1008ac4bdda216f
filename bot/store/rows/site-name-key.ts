/** How saved site names are compared: without regard to case, repeated spaces or compatibility forms of characters. */
export const siteNameKey = (name: string): string => name.normalize('NFKC').replace(/\s+/gu, ' ').trim().toLowerCase();
