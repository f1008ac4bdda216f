/** A platform's name, that of its folder: in members' ids ("discord:123"), in rows and in metrics. A new one needs no list. */
export type PlatformName = Lowercase<string>;
