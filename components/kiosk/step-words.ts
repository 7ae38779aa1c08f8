import { currentEntries, type JobState } from '@/lib/job';
import { groupOf, type Step } from '@/lib/procedure';
import type { AskedThing } from '../step/step-asks';

/** "Thread-locker, medium strength: cover bolts", for every consumable that the step applies. */
export const stepApplies = (job: JobState, step: Step): readonly string[] =>
  step.effects.flatMap((effect) => {
    if (effect.kind !== 'applies') return [];
    const item = job.revision.consumables.find(({ id }) => id === effect.consumable);
    if (item === undefined) return [];
    const where = [
      ...effect.groups.map((id) => groupOf(job.revision, id)?.name ?? id),
      ...effect.parts.map((id) => job.revision.parts.find((part) => part.id === id)?.name ?? id),
    ];
    const strength = item.kind === 'threadLocker' ? `, ${item.strength} strength` : '';
    return [`${item.name}${strength}${where.length === 0 ? '' : `: ${where.join(', ')}`}`];
  });

/** The open step that comes up once this one is done, as the sheet orders them. */
export const previewNext = (
  job: JobState,
  step: Step,
): { readonly number: number; readonly title: string } | undefined => {
  const { steps } = job.revision;
  const settled = (id: string): boolean => id === step.id || job.steps[id]?.status !== 'open';
  const here = steps.indexOf(step);
  const next = [...steps.slice(here + 1), ...steps.slice(0, here)].find(
    ({ id, after }) => !settled(id) && after.every(settled),
  );
  return next === undefined ? undefined : { number: steps.indexOf(next) + 1, title: next.title };
};

type Given = JobState['answers'][number]['answer'];

const answerText = (given: Given): { readonly text: string; readonly good: boolean } => {
  switch (given.kind) {
    case 'check':
      return given.passed ? { text: 'passed', good: true } : { text: 'failed', good: false };
    case 'choice':
      return { text: given.option, good: true };
    case 'count':
      return { text: String(given.count), good: true };
  }
};

/** Checks, counts and choices of a step with what was answered. */
export const stepAsked = (job: JobState, step: Step): readonly AskedThing[] =>
  step.asks.flatMap((ask): readonly AskedThing[] => {
    if (ask.kind === 'value') return [];
    const given = currentEntries(job, step.id).answers.findLast((one) => one.ask === ask.id);
    return [
      {
        id: ask.id,
        label: ask.label,
        ...(ask.kind === 'check' ? { hint: ask.passesWhen } : {}),
        ...(ask.kind === 'choice' ? { hint: 'reused or replaced?' } : {}),
        ...(given === undefined ? {} : { answer: answerText(given.answer) }),
      },
    ];
  });
