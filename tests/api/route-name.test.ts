import fc from 'fast-check';
import { expect, test } from 'vitest';
import { routeName } from '@/lib/server/route-name';

test.each([
  ['/api/health', {}, '/api/health'],
  ['/api/jobs/7f0c/events', { job: '7f0c' }, '/api/jobs/:job/events'],
  ['/api/bays/bay%202/presence', { bay: 'bay 2' }, '/api/bays/:bay/presence'],
  ['/hearing/models/a/b.bin', { path: ['models', 'a', 'b.bin'] }, '/hearing/:path'],
  ['/api/health', undefined, '/api/health'],
])('%s is named by its pattern', (path, params, name) => {
  expect(routeName(path, params)).toBe(name);
});

test('no job’s name reaches the log or the measures, however it was written in the address', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: 'grapheme' }), (job) => {
      fc.pre(
        job.trim() !== '' &&
          !job.includes('/') &&
          !['api', 'jobs', 'events', '.', '..'].includes(job),
      );
      expect(routeName(`/api/jobs/${encodeURIComponent(job)}/events`, { job })).toBe(
        '/api/jobs/:job/events',
      );
    }),
  );
});
