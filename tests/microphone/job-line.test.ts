import { expect, it } from 'vitest';
import { JobLine } from '@/components/microphone/job-line';

const settle = (): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, 0);
  });

it('finishes each job before it begins the next', async () => {
  const line = new JobLine(() => {
    throw new Error('no job fails here');
  }, Date.now);
  const log: string[] = [];
  for (const name of ['a', 'b'])
    line.add(async () => {
      log.push(`${name} begins`);
      await settle();
      log.push(`${name} ends`);
    });
  await settle();
  await settle();
  await settle();
  expect(log).toEqual(['a begins', 'a ends', 'b begins', 'b ends']);
});

it('reports a job that fails and forgets those behind it', async () => {
  const errors: unknown[] = [];
  const line = new JobLine((error) => errors.push(error), Date.now);
  const log: string[] = [];
  line.add(() => Promise.reject(new Error('broken')));
  line.add(() => {
    log.push('behind');
    return Promise.resolve();
  });
  await settle();
  expect(errors).toEqual([new Error('broken')]);
  expect(log).toEqual([]);
});

it('tells how long the present job has been going on', async () => {
  let clock = 1000;
  const line = new JobLine(
    () => undefined,
    () => clock,
  );
  expect(line.busyMs).toBe(0);
  let finish = (): void => undefined;
  line.add(
    () =>
      new Promise((resolve) => {
        finish = resolve;
      }),
  );
  clock = 4000;
  expect(line.busyMs).toBe(3000);
  finish();
  await settle();
  expect(line.busyMs).toBe(0);
});
