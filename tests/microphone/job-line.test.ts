import { expect, it } from 'vitest';
import { JobLine } from '@/components/microphone/job-line';

const settle = (): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, 0);
  });

it('finishes each job before it begins the next', async () => {
  const line = new JobLine(() => {
    throw new Error('no job fails here');
  });
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
  const line = new JobLine((error) => errors.push(error));
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
