import { z } from 'zod';
import { chance, type Chance } from '../../../demo/month/chance';
import { pinSchema } from '../../access';
import { idSchema } from '../../procedure/id';
import { eventsSchema } from '../../server/jobs';
import { shopSettingsSchema } from '../../shop';
import type { BenchJob } from '../bench-wall-shop';
import { ask, faultPin, setUpFaultShop, type FaultShop } from './kiosks';
import { look } from './look';
import { nearMiss, tornText } from './near-miss';
import { startServer } from './running-server';
import { shapeOf, valueOf, type Hints } from './schema-values';

export interface FuzzReport {
  readonly requests: number;
  /** By status. */
  readonly answers: Readonly<Record<string, number>>;
  /** No answer within half a minute, or a connection that broke. */
  readonly hung: number;
  readonly failed: number;
  /** Events that were good after all, and stored. */
  readonly taken: number;
  /** Events that are stored without having been taken, or taken and not stored. */
  readonly changed: number;
  /** Whether people, PINs, bays, tools and sheets are as they were. */
  readonly fixedChanged: boolean;
  readonly faults: readonly string[];
  /** The first requests that went wrong, to be tried again. */
  readonly examples: readonly string[];
}

interface Body {
  readonly path: string;
  readonly schema: z.ZodType;
  readonly method?: string;
}

const person = { person: idSchema, pin: pinSchema };

/** What the interface takes, by its own schemas. */
const bodiesOf = ({
  state,
  bay,
}: BenchJob): readonly [readonly [Body, number], ...(readonly [Body, number])[]] => [
  [{ path: `/api/jobs/${state.job}/events`, schema: z.strictObject({ events: eventsSchema }) }, 80],
  [
    {
      path: `/api/jobs/${state.job}/foreman`,
      schema: z.strictObject({ ...person, events: eventsSchema }),
    },
    4,
  ],
  [{ path: '/api/session', schema: z.strictObject({ ...person, bay: idSchema }) }, 2],
  [{ path: '/api/foreman', schema: z.strictObject(person) }, 2],
  [{ path: '/api/shop/settings', schema: shopSettingsSchema, method: 'PUT' }, 5],
  [
    {
      path: `/api/bays/${bay}/presence`,
      schema: z.strictObject({ cannotBeHeard: z.string().max(200).optional() }),
    },
    5,
  ],
];

const some = (values: readonly string[]): readonly [string, ...string[]] => [
  values[0] ?? 'none',
  ...values,
];

const hintsOf = (job: BenchJob, random: Chance): Hints => {
  const { revision, seq, job: id, readings } = job.state;
  const asks = revision.steps.flatMap((step) => step.asks.map((one) => one.id));
  return {
    id: [random.uuid()],
    job: [id],
    seq: [seq + 1, seq + 1, seq + 1, seq, seq + 2],
    actor: [job.person.id],
    role: [job.person.role],
    device: [job.device],
    person: [job.person.id, 'mara-quill', 'nobody'],
    pin: [faultPin, '0000'],
    bay: [job.bay, 'bay-1'],
    step: some(revision.steps.map((step) => step.id)),
    ask: some(asks),
    group: some(revision.groups.map((group) => group.id)),
    fastener: some(revision.groups.flatMap((group) => group.fasteners.map((one) => one.id))),
    part: some(revision.parts.map((part) => part.id)),
    entry: some(readings.map((reading) => reading.id)),
    kitItem: some(revision.kit.map((item) => item.id)),
    procedure: [revision.procedure],
    revision: [revision.revision],
    mechanic: ['mechanic-1', 'mechanic-2', 'mara-quill'],
    reason: [{ text: 'Waiting for parts' }],
    count: [1, 2],
  };
};

const strangePaths = [
  '/api/jobs/%00/events',
  '/api/jobs/__proto__/events',
  '/api/%E0%A4%A',
  '/api/',
  '/api/jobs/x/../y',
] as const;

interface Sent {
  readonly path: string;
  readonly method: string;
  readonly body: string;
  readonly headers: Readonly<Record<string, string>>;
}

const requestFor = (job: BenchJob, random: Chance): Sent => {
  const { path, schema, method = 'POST' } = random.weighted(bodiesOf(job));
  const value = valueOf(shapeOf(schema), random, hintsOf(job, random));
  const body = JSON.stringify(random.is(0.6) ? nearMiss(value, random) : value);
  // Whoever signs on or off there is another browser: the session of the kiosk must last.
  const signsOn = path === '/api/session' || path === '/api/foreman';
  const headers = {
    cookie: signsOn
      ? ''
      : random.is(0.97)
        ? job.cookie
        : random.pick(['', 'baycall-session=x', job.cookie.slice(3)]),
    ...(random.is(0.02)
      ? { 'content-type': random.pick(['text/plain', 'application/xml', '']) }
      : {}),
    ...(random.is(0.02) ? { origin: random.pick(['null', 'http://other.test']) } : {}),
  };
  return {
    path: random.is(0.02) ? random.pick(strangePaths) : path,
    method: random.is(0.02) ? random.pick(['PUT', 'DELETE', 'PATCH']) : method,
    body: random.is(0.05) ? tornText(body, random) : body,
    headers,
  };
};

const storedSchema = z.object({ stored: z.array(z.number()), seq: z.number() });

/** A server of its own, requests that are nearly right, several at a time, and what became of everything. */
export const fuzz = async (
  folder: string,
  { requests, seed }: { readonly requests: number; readonly seed: string },
): Promise<FuzzReport> => {
  const random = chance(`fuzz ${seed}`);
  const shop: FaultShop = await setUpFaultShop(folder, 4);
  const before = await look(folder, shop.acknowledged);
  const server = await startServer(folder);
  const answers: Record<string, number> = {};
  const taken = new Set<string>();
  const examples: string[] = [];
  let [hung, failed] = [0, 0];
  let left = requests;

  const one = async (job: BenchJob): Promise<void> => {
    const { path, ...sent } = requestFor(job, random);
    const came = await ask(server.address, path, sent);
    answers[came?.status ?? 'none'] = (answers[came?.status ?? 'none'] ?? 0) + 1;
    const wrong = came === undefined || came.status >= 500;
    if (wrong && examples.length < 5)
      examples.push(
        `${sent.method} ${path} ${sent.body.slice(0, 500)}: ${came?.body ?? 'no answer'}`,
      );
    if (came === undefined) hung += 1;
    else if (came.status >= 500) failed += 1;
    const stored = came?.status === 200 ? storedSchema.safeParse(JSON.parse(came.body)) : undefined;
    if (stored?.success !== true) return;
    for (const seq of stored.data.stored) taken.add(`${job.state.job} ${seq}`);
    job.state = { ...job.state, seq: stored.data.seq };
  };

  await Promise.all(
    shop.jobs.map(async (job) => {
      while (left > 0) {
        left -= 1;
        await one(job);
      }
    }),
  );
  await server.kill();
  const after = await look(folder, shop.acknowledged);
  return {
    requests,
    answers,
    hung,
    failed,
    taken: taken.size,
    changed: Math.abs(after.events - before.events - taken.size),
    fixedChanged: after.fixed !== before.fixed,
    faults: after.faults,
    examples,
  };
};
