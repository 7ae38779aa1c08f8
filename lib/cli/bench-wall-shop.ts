import { v7 as id } from 'uuid';
import { demoProcedures, demoShop } from '../../demo';
import { beginSession, deviceOf, newDeviceSecret } from '../access';
import { toleranceInterval } from '../fastening/specification';
import {
  applyEvent,
  askSpecification,
  canBegin,
  openAsks,
  openJob,
  writeEvent,
  type Happening,
  type JobEvent,
  type JobState,
} from '../job';
import type { Person } from '../people';
import { stepOf, type Ask, type Revision } from '../procedure';
import { fromCanonical } from '../quantity';
import { jobLog, setUpShop, type Store } from '../store';

/** One job that stands open in the measured shop, and who may write to it. */
export interface BenchJob {
  readonly bay: string;
  readonly person: Person;
  readonly cookie: string;
  readonly device: string;
  state: JobState;
}

const firstNames = ['Ada', 'Ben', 'Cleo', 'Dov', 'Esme', 'Finn', 'Gwen', 'Hal', 'Iris', 'Jon'];
const foreman: Person = { id: 'mara-quill', name: 'Mara Quill', role: 'foreman' };
const why = { text: 'as the sheet says' };

const mechanics = (bays: number): readonly Person[] =>
  Array.from({ length: bays }, (_, n) => {
    const name = `${firstNames[n % 10] ?? ''} ${String.fromCharCode(65 + Math.floor(n / 10))}.`;
    return { id: `mechanic-${n + 1}`, name, role: 'mechanic' as const };
  });

const event = (
  state: JobState | { readonly job: string; readonly seq: 0 },
  by: Person,
  device: string,
  atMs: number,
  happening: Happening,
): JobEvent =>
  writeEvent(state, happening, {
    now: new Date(atMs).toISOString(),
    newId: id,
    actor: by.id,
    role: by.role,
    device,
    input: { by: 'touch' },
  });

/** The next event of a job as its mechanic writes it, and the job after it. Throws where it is refused. */
export const nextEvent = (
  job: BenchJob,
  happening: Happening,
  atMs: number,
  by: Person = job.person,
): JobEvent => {
  const one = event(job.state, by, job.device, atMs, happening);
  const after = applyEvent(job.state, one);
  if (!after.ok) throw new Error(`${happening.type}: ${after.error.message}`);
  job.state = after.value;
  return one;
};

const middle = (revision: Revision, ask: Extract<Ask, { kind: 'value' }>): number => {
  const spec = askSpecification(revision, ask);
  const { lower, upper } = toleranceInterval(spec) ?? {};
  const value = ((lower ?? upper ?? 3) + (upper ?? lower ?? 3)) / 2;
  return Number(fromCanonical(value, spec.unit).toFixed(2));
};

/** What a careful mechanic enters for one thing that is asked. */
const entriesFor = (state: JobState, step: string): readonly Happening[] =>
  openAsks(state, step).flatMap(({ ask, fasteners }): Happening[] => {
    const given = { type: 'answerGiven' as const, step, ask: ask.id };
    switch (ask.kind) {
      case 'value': {
        const { unit } = askSpecification(state.revision, ask);
        const value = middle(state.revision, ask);
        const reading = { type: 'readingTaken' as const, step, ask: ask.id, value, unit };
        return fasteners.length === 0
          ? [reading]
          : fasteners.map((one) => ({ ...reading, fastener: one.id }));
      }
      case 'count':
        return [{ ...given, answer: { kind: 'count', count: ask.expected } }];
      case 'choice':
        return [{ ...given, answer: { kind: 'choice', option: 'replaced' } }];
      case 'check':
        return [{ ...given, answer: { kind: 'check', passed: true } }];
    }
  });

/** What does the first open step of a job; nothing where none may be begun. */
export const nextStepDone = (state: JobState): readonly Happening[] => {
  const step = state.revision.steps.find((one) => canBegin(state, one.id).ok);
  if (step === undefined) return [];
  const begun: Happening = { type: 'stepBegun', step: step.id };
  const ready: Happening = { type: 'readyGiven', step: step.id };
  return [
    ...(state.currentStep === step.id ? [] : [begun]),
    ...(stepOf(state.revision, step.id)?.oneShot === true ? [ready] : []),
    ...entriesFor(state, step.id),
    { type: 'stepDone', step: step.id },
  ];
};

/** Brings a job to a step, its last event at `endMs`. */
const workTo = (job: BenchJob, steps: number, endMs: number): readonly JobEvent[] => {
  const events: JobEvent[] = [];
  const beganMs = Date.parse(job.state.openedAt);
  for (let done = 0; done < steps; done += 1) {
    const happenings = nextStepDone(job.state);
    const atMs = beganMs + ((endMs - beganMs) * (done + 1)) / (steps + 1);
    for (const happening of happenings) events.push(nextEvent(job, happening, atMs));
  }
  return events;
};

/** What stands in some bays, so that a picture has something to show: calls, holds, deviations, none at all. */
const story = (job: BenchJob, n: number, nowMs: number): readonly JobEvent[] => {
  const ago = (minutes: number): number => nowMs - minutes * 60_000;
  const step = job.state.currentStep;
  switch (n % 9) {
    case 1:
      return [nextEvent(job, { type: 'foremanCalled' }, ago(4))];
    case 3:
      return [nextEvent(job, { type: 'jobHeld', reason: { text: 'Waiting for parts' } }, ago(25))];
    case 5:
      return [
        nextEvent(job, { type: 'deviationNoted', kind: 'anotherWay', step, reason: why }, ago(12)),
      ];
    case 7:
      return [nextEvent(job, { type: 'jobHeld', reason: { text: 'Break' } }, ago(9))];
    default:
      return [];
  }
};

/** Puts a shop of so many bays into an empty store, a job at work in each, and signs their mechanics on. */
export const setUpWallShop = async (
  store: Store,
  bays: number,
  now: Date,
  {
    stories = true,
    pinHashes = {},
  }: { readonly stories?: boolean; readonly pinHashes?: Readonly<Record<string, string>> } = {},
): Promise<readonly BenchJob[]> => {
  const people = mechanics(bays);
  const shop = {
    ...demoShop(now.toISOString()),
    bays: Array.from({ length: bays }, (_, n) => ({ id: `bay-${n + 1}`, name: `Bay ${n + 1}` })),
    people: [foreman, ...people],
  };
  await setUpShop(store, { shop, pinHashes, procedures: demoProcedures }, now);
  const log = jobLog(store, () => now);
  const jobs: BenchJob[] = [];
  for (const [n, person] of people.entries()) {
    const revision = demoProcedures[n % demoProcedures.length];
    if (revision === undefined) throw new Error('the demo has no procedures');
    const bay = `bay-${n + 1}`;
    const secret = newDeviceSecret();
    const device = deviceOf(secret);
    const token = await beginSession(store, { person, bay, device }, now.getTime());
    const plate = `F-${String(14 + 13 * n).padStart(3, '0')}`;
    const opened = event({ job: id(), seq: 0 }, person, device, now.getTime() - 3_600_000, {
      type: 'jobOpened',
      procedure: revision.procedure,
      revision: revision.revision,
      vehicle: { plate, description: 'Utility vehicle, grounds crew' },
      bay,
    });
    const state = openJob(revision, opened);
    if (!state.ok) throw new Error(state.error.message);
    const cookie = `baycall-device=${secret}; baycall-session=${token}`;
    const job: BenchJob = { bay, person, cookie, device, state: state.value };
    const steps = 2 + ((n * 5) % Math.max(1, revision.steps.length - 6));
    const events = [
      opened,
      ...workTo(job, steps, now.getTime() - 30 * 60_000),
      ...(stories ? story(job, n, now.getTime()) : []),
    ];
    const stored = await log.append(job.state.job, events);
    if (!stored.ok) throw new Error(JSON.stringify(stored.error));
    jobs.push(job);
  }
  return jobs;
};
