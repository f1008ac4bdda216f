/**
 * A club's way to a mount that is like one that ships (`like`): it has that one's stages, faults and questions, its own name,
 * and whatever it says otherwise. Worked out on the entries as they are written, before they are held to their schemas.
 */

type Value = Readonly<Record<string, unknown>>;

const isPlainObject = (value: unknown): value is Value =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What such a way says for itself, or not at all. */
const OWN: readonly string[] = ['id', 'title', 'like', 'words'];

const inherited = (base: Value): Value =>
  Object.fromEntries(Object.entries(base).filter(([key]) => !OWN.includes(key)));

export interface LikePaths {
  /** The entries of paths.yaml by id, with what they take over. */
  readonly paths: ReadonlyMap<string, Value>;
  /** Id of a way → those that are like it. */
  readonly likes: ReadonlyMap<string, readonly string[]>;
  readonly problems: readonly { readonly id: string; readonly like: string; readonly message: string }[];
}

/** @param paths the entries of paths.yaml by id, the club's over those that ship */
export const likePaths = (paths: ReadonlyMap<string, Value>): LikePaths => {
  const made = new Map(paths);
  const likes = new Map<string, readonly string[]>();
  const problems: LikePaths['problems'][number][] = [];
  for (const [id, value] of paths) {
    const { like } = value;
    if (typeof like !== 'string') continue;
    const base = paths.get(like);
    if (base === undefined || base['like'] !== undefined) {
      const ways = [...paths].flatMap(([known, { like: other }]) => (other === undefined ? [known] : []));
      const message = `wants a way that ships: ${ways.join(', ')}; it is "${like}"`;
      problems.push({ id, like, message });
      continue;
    }
    made.set(id, { ...inherited(base), ...value });
    likes.set(like, [...(likes.get(like) ?? []), id]);
  }
  return { paths: made, likes, problems };
};

const joined = (ids: readonly unknown[], likes: LikePaths['likes']): readonly unknown[] => [
  ...new Set(ids.flatMap((id) => [id, ...(typeof id === 'string' ? (likes.get(id) ?? []) : [])])),
];

/** A fault or a question that holds on some ways holds on those like them; a weight on a way counts there as well. */
export const holdsOnLikes = (value: Value, likes: LikePaths['likes']): Value => {
  const { only, weightOn } = value;
  const paths = isPlainObject(only) ? only['paths'] : undefined;
  return {
    ...value,
    ...(isPlainObject(only) && Array.isArray(paths) ? { only: { ...only, paths: joined(paths, likes) } } : {}),
    ...(Array.isArray(weightOn)
      ? {
          weightOn: weightOn.flatMap((one: unknown) => {
            const own = isPlainObject(one) && typeof one['path'] === 'string' ? (likes.get(one['path']) ?? []) : [];
            return [one, ...own.map((path) => ({ ...(one as Value), path }))];
          }),
        }
      : {}),
  };
};

/** Words that leave a way open leave those like it open. */
export const familyWithLikes = (value: Value, likes: LikePaths['likes']): Value =>
  Array.isArray(value['paths']) ? { ...value, paths: joined(value['paths'], likes) } : value;

/** Words for a way that ships may mean one like it: a family, named as the way is, so that nothing narrower is heard as neither. */
export const familiesOfLikes = ({
  paths,
  likes,
}: LikePaths): readonly { readonly id: string; readonly label: unknown; readonly paths: readonly string[] }[] =>
  [...likes].map(([id, own]) => ({ id, label: paths.get(id)?.['title'], paths: [id, ...own] }));
