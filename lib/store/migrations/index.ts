import type { Migration } from 'kysely';
import { shopAndJobs } from './0001-shop-and-jobs';
import { shopFacts } from './0002-shop-facts';
import { jobLinks } from './0003-job-links';
import { voicePractices } from './0004-voice-practices';
import { bayFacts } from './0005-bay-facts';
import { anchors } from './0007-anchors';
import { clipDeletion } from './0008-clip-deletion';
import { review } from './0009-review';

/** All migrations in order, forward only. A released one is never changed. */
export const migrations: Readonly<Record<string, Migration>> = {
  '0001-shop-and-jobs': shopAndJobs,
  '0002-shop-facts': shopFacts,
  '0003-job-links': jobLinks,
  '0004-voice-practices': voicePractices,
  '0005-bay-facts': bayFacts,
  '0007-anchors': anchors,
  '0008-clip-deletion': clipDeletion,
  '0009-review': review,
};
