import { z } from 'zod';
import { happeningText, type ScriptLine } from '@/demo/script';
import { jobEventSchema, type JobEvent } from '@/lib/job';

const bayAnswer = z.object({ job: z.object({ id: z.uuid(), phase: z.string() }).nullable() });
const jobAnswer = z.object({ events: z.array(jobEventSchema) });

const read = async (address: string): Promise<unknown> => {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} answered with ${response.status}`);
  return response.json();
};

/** The job that stands in the bay. */
export const jobIn = async (address: string, bay: string): Promise<string> => {
  const { job } = bayAnswer.parse(await read(`${address}/api/bays/${bay}`));
  if (job === null) throw new Error(`no job stands in ${bay}`);
  return job.id;
};

/** What is stored of a job after its opening, as the server gives it to anyone. */
export const storedEvents = async (address: string, job: string): Promise<readonly JobEvent[]> =>
  jobAnswer.parse(await read(`${address}/api/jobs/${job}`)).events.slice(1);

export const textsOf = (events: readonly JobEvent[]): readonly string[] =>
  events.map(({ happening }) => happeningText(happening));

/** One happening that a script expects, and the line that brings it about. */
export interface Expected {
  readonly line: ScriptLine;
  readonly text: string;
}

export const expectedOf = (script: readonly ScriptLine[]): readonly Expected[] =>
  script.flatMap((line) => line.then.map((text) => ({ line, text })));
