import { describe, expect, test } from 'vitest';
import { memoryDisk } from '@/components/kiosk/keep/memory-disk';
import { openBay } from '@/components/kiosk/keep/restore';
import type { BayNow, KioskLink, SignedOn } from '@/components/kiosk/link';
import { replay, type JobState } from '@/lib/job';
import { err, ok } from '@/lib/result';
import { Bay, event, jobId } from '../job/driver';
import { doSteps } from '../job/hands';
import { lidJob } from '../job/lid-procedure';

const mia: SignedOn = {
  person: { id: 'mia', name: 'Mia', role: 'mechanic' },
  device: 'kiosk-1',
};

const bayAfter = (...steps: readonly string[]): Bay => {
  const bay = new Bay(lidJob);
  doSteps(bay, ...steps);
  return bay;
};

/** The server, with the job as it has it; without one it is off. */
const server = (now?: BayNow, bay?: Bay): KioskLink => {
  const record = bay === undefined ? err('off') : ok({ revision: lidJob, events: bay.log });
  return {
    readBay: () => Promise.resolve(now === undefined ? err('off') : ok(now)),
    readRecord: () => Promise.resolve(record),
    readJob: () => Promise.resolve(record.ok ? replay(lidJob, record.value.events) : record),
  } as unknown as KioskLink;
};

/** The kiosk's disk after work on a job: what is stored, who was signed on. */
const diskWith = async (bay: Bay) => {
  const disk = memoryDisk();
  await disk.keepBay({ bay: 'bay-1', job: jobId, signedOn: mia });
  await disk.keepRecord(jobId, { revision: lidJob, events: bay.log });
  return disk;
};

const nobody = { job: undefined, signedOn: undefined };
const seqOf = (job: JobState | undefined): number | undefined => job?.seq;

describe('a kiosk opened without the server', () => {
  test('has the job and the person that it last had, whatever the old page says', async () => {
    const bay = bayAfter('drain');
    const opened = await openBay(await diskWith(bay), server(), 'bay-1', nobody);
    expect(seqOf(opened.job)).toBe(bay.state.seq);
    expect(opened.signedOn).toEqual(mia);
  });

  test('puts what is not stored on top', async () => {
    const bay = bayAfter('drain');
    const disk = await diskWith(bay);
    const waiting = [event(bay.state.seq + 1, { type: 'foremanCalled' })];
    await disk.keepWaiting(waiting);
    const opened = await openBay(disk, server(), 'bay-1', nobody);
    expect(opened.waiting).toEqual(waiting);
    expect(opened.job?.foremanCalledAt).toBe(waiting[0]?.at);
  });

  test('has no job where the last one was over, though the old page still has it', async () => {
    const bay = bayAfter('drain');
    const disk = await diskWith(bay);
    await disk.keepBay({ bay: 'bay-1', job: undefined, signedOn: mia });
    const page = { job: bay.state, signedOn: mia };
    expect((await openBay(disk, server(), 'bay-1', page)).job).toBeUndefined();
  });
});

describe('a kiosk opened with the server', () => {
  test('has the job and the person as the server says', async () => {
    const bay = bayAfter('drain', 'open-lid');
    const now = { job: { id: jobId, seq: bay.state.seq }, signedOn: undefined };
    const opened = await openBay(await diskWith(bayAfter('drain')), server(now, bay), 'bay-1', {
      job: undefined,
      signedOn: mia,
    });
    expect(seqOf(opened.job)).toBe(bay.state.seq);
    expect(opened.signedOn).toBeUndefined();
  });

  test('has what was done here first, though others went on: sending it will show both sides', async () => {
    const before = bayAfter('drain');
    const disk = await diskWith(before);
    const mine = event(before.state.seq + 1, { type: 'foremanCalled' });
    await disk.keepWaiting([{ ...mine, id: '00000000-0000-4000-9000-000000000001' }]);
    const now = bayAfter('drain', 'open-lid');
    const there = { job: { id: jobId, seq: now.state.seq }, signedOn: mia };
    const opened = await openBay(disk, server(there, now), 'bay-1', nobody);
    expect(seqOf(opened.job)).toBe(mine.seq);
    expect(opened.waiting).toHaveLength(1);
  });
});
