import { z } from 'zod';
import { err, ok, type Result } from '@/lib/result';
import type { DeafnessReason } from './failure';
import type { ModelFacts } from './protocol';

const factsSchema = z.object({
  name: z.string(),
  url: z.string().startsWith('/'),
  bytes: z.number().int().positive(),
  sha256: z.string().length(64),
});
const problemSchema = z.object({ problem: z.enum(['modelMissing', 'modelCorrupt']) });

/** Asks the server which model is in use, or what is wrong with it. */
export const modelFacts = async (base: string): Promise<Result<ModelFacts, DeafnessReason>> => {
  try {
    const response = await fetch(`${base}/model.json`, { cache: 'no-store' });
    const body: unknown = await response.json();
    const facts = factsSchema.safeParse(body);
    if (facts.success) return ok(facts.data);
    const problem = problemSchema.safeParse(body);
    return err(problem.success ? problem.data.problem : 'modelMissing');
  } catch {
    // No answer at all: the server is away; the recogniser tries again by itself.
    return err('workerDead');
  }
};
