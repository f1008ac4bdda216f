/** `mydata`: shows the member who asks everything that is kept about them. */
import * as z from 'zod';
import type { Choice } from '../../ground/problem.js';
import { NOWHERE, reply, type Fact, type Outcome } from '../../reply/reply.js';
import { isoUtc } from '../../reply/wording.js';
import type { Gear, StoredSite } from '../../store/store.js';
import { choice, defineCommand, integer, optional } from '../core/command.js';
import { limitsWords, speedsWords } from '../asking/mount-numbers.js';
import { KEPT_PERIODS } from './privacy-text.js';
import { siteLine } from '../site/site-words.js';

const PARTS = ['summary', 'sites', 'gear', 'reminders', 'walks'] as const;
type Part = (typeof PARTS)[number];

/** What `exportMember` gives, as far as it is worded here; `data` carries all of it as it is. */
const kept = z.object({
  sites: z.array(z.custom<StoredSite>((value) => typeof value === 'object' && value !== null && 'name' in value)),
  gear: z
    .object({
      mount: z.string().nullable(),
      connection: z.string().nullable(),
      system: z.string().nullable(),
      speeds: z.custom<Gear['speeds']>((value) => value === null || typeof value === 'object'),
      limits: z.custom<Gear['limits']>((value) => value === null || typeof value === 'object'),
      apertureMm: z.number().nullable(),
    })
    .nullable(),
  reminders: z.array(z.object({ id: z.string(), dueUtcMs: z.number(), to: z.string(), text: z.string() })),
  walks: z.array(
    z.object({ id: z.string(), updatedUtcMs: z.number(), endedUtcMs: z.number().nullable(), state: z.unknown() }),
  ),
  walksHelpedWith: z.array(z.object({ id: z.string(), updatedUtcMs: z.number() })),
  causesCounted: z.array(z.object({ faultId: z.string(), month: z.string() })),
  notes: z.array(z.string()),
});
type Kept = z.infer<typeof kept>;

const steps = (state: unknown): number => {
  const read = z.object({ events: z.array(z.unknown()) }).safeParse(state);
  return read.success ? read.data.events.length : 0;
};

const horizonText = ({ horizon }: StoredSite): string =>
  horizon === null
    ? ''
    : `; horizon ${horizon.map(({ azimuthDeg, altitudeDeg }) => `${azimuthDeg}:${altitudeDeg}`).join(', ')}`;

const gearFacts = ({
  mount,
  connection,
  system,
  speeds,
  limits,
  apertureMm,
}: NonNullable<Kept['gear']>): readonly Fact[] => [
  ...Object.entries({ mount, connection, system }).map(([label, value]) => ({ label, value: value ?? 'not said' })),
  ...(speeds === null ? [] : [{ label: 'speeds', value: speedsWords(speeds) }]),
  ...(limits === null ? [] : [{ label: 'limits', value: limitsWords(limits) }]),
  ...(apertureMm === null ? [] : [{ label: 'aperture', value: `${Math.round(apertureMm)} mm` }]),
];

const factsOf = (part: Part, all: Kept): readonly Fact[] => {
  switch (part) {
    case 'summary':
      return [
        { label: 'Sites', value: all.sites.length === 0 ? 'none' : all.sites.map(({ name }) => name).join(', ') },
        {
          label: 'Gear',
          value:
            all.gear === null
              ? 'none'
              : gearFacts(all.gear)
                  .map(({ value }) => value)
                  .join(', '),
        },
        { label: 'Reminders', value: String(all.reminders.length) },
        {
          label: 'Troubleshooting walks',
          value: `${all.walks.length} about you, ${all.walksHelpedWith.length} you helped with`,
        },
        {
          label: 'Causes counted for the club',
          value:
            all.causesCounted.length === 0
              ? 'none'
              : all.causesCounted.map(({ faultId, month }) => `${faultId} (${month})`).join(', '),
        },
        { label: 'Platform notes', value: all.notes.length === 0 ? 'none' : all.notes.join(', ') },
      ];
    case 'sites':
      return all.sites.map((site) => ({ label: site.name, value: `${siteLine(site)}${horizonText(site)}` }));
    case 'gear':
      return all.gear === null ? [] : gearFacts(all.gear);
    case 'reminders':
      return all.reminders.map(({ id, dueUtcMs, to, text }) => ({
        label: `${id}, ${isoUtc(dueUtcMs)}, to ${to === 'member' ? 'you' : 'a channel'}`,
        value: text,
      }));
    case 'walks':
      return [
        ...all.walks.map(({ id, updatedUtcMs, endedUtcMs, state }) => ({
          label: id,
          value: `last touched ${isoUtc(updatedUtcMs)}, ${steps(state)} steps, ${endedUtcMs === null ? 'under way' : 'ended'}`,
        })),
        ...all.walksHelpedWith.map(({ id, updatedUtcMs }) => ({
          label: id,
          value: `you helped; last touched ${isoUtc(updatedUtcMs)}`,
        })),
      ];
  }
};

const PAGE_LENGTH = 20;

const choices = (part: Part, nextPage: number | null): readonly Choice[] => [
  ...(nextPage === null ? [] : [{ label: 'Next page', run: `mydata part:${part} page:${nextPage}`, preferred: true }]),
  ...PARTS.filter((other) => other !== part).map((other) => ({
    label: other === 'summary' ? 'Summary' : `My ${other}`,
    run: `mydata part:${other}`,
  })),
  { label: 'Forget me', run: 'forget' },
];

const summaryOf = (part: string, facts: number, page: number, pages: number): string => {
  if (part === 'summary') return 'Only this, and only for you to see. Each part can be shown in full.';
  if (facts === 0) return `No ${part}.`;
  return `Your ${part}, in full${pages === 1 ? '' : `, page ${page} of ${pages}`}.`;
};

export const mydata = defineCommand({
  name: 'mydata',
  summary: 'Show me everything you keep about me',
  options: {
    part: optional(choice('Only this part, in full', PARTS)),
    page: optional(integer('Which page of a long part', { min: 1, max: 100 })),
  },
  examples: ['mydata', 'mydata part:sites'],
  run: async (deps, { options, asker }): Promise<Outcome> => {
    const exported = await deps.store.exportMember(asker.memberId);
    const all = kept.parse(exported);
    const part = options.part ?? 'summary';
    const whole = factsOf(part, all);
    const pages = Math.max(1, Math.ceil(whole.length / PAGE_LENGTH));
    const page = Math.min(options.page ?? 1, pages);
    const facts = whole.slice((page - 1) * PAGE_LENGTH, page * PAGE_LENGTH);
    const isNothing =
      all.sites.length +
        all.reminders.length +
        all.walks.length +
        all.walksHelpedWith.length +
        all.causesCounted.length +
        all.notes.length ===
        0 && all.gear === null;
    return reply({
      title: 'What I keep about you',
      audience: 'asker',
      facts: isNothing ? [] : facts,
      summary: isNothing ? 'Nothing.' : summaryOf(part, facts.length, page, pages),
      notes: part === 'summary' ? KEPT_PERIODS : [],
      choices: isNothing ? [] : choices(part, page < pages ? page + 1 : null),
      pointsAt: NOWHERE,
      data: { kept: exported },
    });
  },
});
