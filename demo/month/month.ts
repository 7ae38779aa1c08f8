import type { JobEvent } from '@/lib/job';
import type { Person } from '@/lib/people';
import { demoProcedures } from '../procedures';
import { demoShop } from '../shop';
import type { Revision } from '@/lib/procedure';
import type { Vehicle } from '@/lib/shop';
import { BenchHand, type Bench } from './bench-hand';
import { chance, type Chance } from './chance';
import { course, resume, type Pause } from './course';
import * as words from './words';

export interface MonthWish {
  readonly seed: string;
  /** The day after the last one, "2026-03-31"; times are of that day's midnight UTC and the days before. */
  readonly until: string;
  readonly days: number;
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** Who works when: early and late shift, hours after midnight. */
const shifts = [
  { person: 'tom-ashby', fromHour: 6, toHour: 14 },
  { person: 'jo-fenn', fromHour: 14, toHour: 22 },
] as const;

interface AtWork {
  readonly bay: string;
  readonly hand: BenchHand;
  readonly going: Generator<Pause, void>;
  freeAtMs: number;
}

const vehicleFor = (revision: Revision, dice: Chance): Vehicle => {
  const number = revision.procedure === 'beacon-kit' ? 30 + dice.next() * 25 : 1 + dice.next() * 29;
  const plate = `F-${String(Math.floor(number)).padStart(3, '0')}`;
  const kind = revision.procedure === 'beacon-kit' ? 'Light truck, steel cab' : 'Utility vehicle';
  return { plate, description: kind, odometerKm: Math.floor(dice.between(4_000, 90_000)) };
};

const personOf = (id: string, people: readonly Person[]): Person => {
  const person = people.find((one) => one.id === id);
  if (person === undefined) throw new Error(`The demo has nobody called ${id}.`);
  return person;
};

/** Nobody works on a Saturday or a Sunday. */
const isWorkday = (dayMs: number): boolean => ![0, 6].includes(new Date(dayMs).getUTCDay());

/**
 * A month of an invented shop, worked through the kiosk by simulated mechanics: the events of each job that was closed
 * in time, in the order in which the jobs were closed. The same wish gives the same month.
 */
export const demoMonth = ({ seed, until, days }: MonthWish): readonly (readonly JobEvent[])[] => {
  const dice = chance(`${seed} ${until} ${days}`);
  const shop = demoShop(until);
  const endMs = Date.parse(`${until}T00:00:00Z`);
  const beginMs = endMs - days * DAY_MS;
  const bench: Bench = {
    dice,
    cabinet: { tools: shop.torqueTools, cycles: {} },
    month: (atMs) => Math.min(1, Math.max(0, (atMs - beginMs) / (endMs - beginMs))),
  };
  const foreman = personOf('mara-quill', shop.people);
  const working: AtWork[] = [];
  const closed: (readonly JobEvent[])[] = [];
  /** When the last job drove out of a bay. */
  const emptySinceMs = new Map<string, number>();

  const begin = (person: Person, nowMs: number): AtWork | undefined => {
    const bay = shop.bays.find(
      ({ id }) => !working.some((one) => one.bay === id) && (emptySinceMs.get(id) ?? 0) <= nowMs,
    )?.id;
    if (bay === undefined) return undefined;
    const [first, ...rest] = demoProcedures;
    if (first === undefined) return undefined;
    const revision = dice.pick([first, ...rest]);
    const order = { revision, vehicle: vehicleFor(revision, dice), bay };
    const hand = new BenchHand(order, person, nowMs, bench);
    const job = { bay, hand, going: course(hand, foreman, dice), freeAtMs: nowMs };
    working.push(job);
    return job;
  };

  /** Works on one job until it pauses for long, is closed, or the shift is over; when that was. */
  const workOn = (job: AtWork, person: Person, fromMs: number, toMs: number): number => {
    const { hand } = job;
    if (hand.nowMs < fromMs || hand.job.phase === 'held') {
      hand.takeOver(person, fromMs);
      resume(hand);
    }
    for (;;) {
      const next = job.going.next();
      if (next.done === true) {
        closed.push(hand.events);
        working.splice(working.indexOf(job), 1);
        emptySinceMs.set(job.bay, hand.nowMs);
        return hand.nowMs;
      }
      if (next.value.kind === 'held') {
        job.freeAtMs = next.value.untilMs;
        return hand.nowMs;
      }
      if (hand.nowMs < toMs) continue;
      hand.act({ kind: 'hold' });
      hand.reason(words.endOfShift);
      job.freeAtMs = hand.nowMs;
      return hand.nowMs;
    }
  };

  for (let dayMs = beginMs; dayMs < endMs; dayMs += DAY_MS) {
    if (!isWorkday(dayMs)) continue;
    for (const { person, fromHour, toHour } of shifts) {
      const toMs = dayMs + toHour * HOUR_MS;
      let nowMs = dayMs + (fromHour + dice.between(0.05, 0.3)) * HOUR_MS;
      while (nowMs < toMs - HOUR_MS / 2) {
        const who = personOf(person, shop.people);
        const waiting = working.filter(({ freeAtMs }) => freeAtMs <= nowMs)[0];
        const job = waiting ?? begin(who, nowMs);
        nowMs =
          job === undefined
            ? nowMs + 5 * 60_000
            : workOn(job, who, nowMs, toMs) + dice.between(5, 20) * 60_000;
      }
    }
  }
  return closed;
};
