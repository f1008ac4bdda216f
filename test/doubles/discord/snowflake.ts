/** Ids as Discord makes them: milliseconds since 2015, then a counter (Discord's developer documentation, "Snowflakes"). */
const DISCORD_EPOCH_MS = 1_420_070_400_000;
let counter = 0n;

export const snowflake = (atMs: number = Date.now()): string => {
  counter = (counter + 1n) & 0x3f_ffffn;
  return ((BigInt(atMs - DISCORD_EPOCH_MS) << 22n) | counter).toString();
};

/** Which shard a server's events go to. */
export const shardOf = (guildId: string, shardCount: number): number =>
  Number((BigInt(guildId) >> 22n) % BigInt(shardCount));
