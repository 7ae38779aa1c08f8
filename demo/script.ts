import type { Happening } from '@/lib/job';

/** One line of a spoken job: what is said while a step is on the screen, and what is stored because of it. */
export interface ScriptLine {
  /** Recording, relative to `demo/voices`; empty for what the foreman does by hand. */
  readonly file: string;
  /** A phrase; free words after the kiosk asked why; or an act of the foreman, with a PIN and no sound. */
  readonly how: 'phrase' | 'dictation' | 'foreman';
  readonly step: string;
  readonly say: string;
  /** The happenings that the line adds to the record, each as `happeningText` has it. */
  readonly then: readonly string[];
}

const isHow = (text: string): text is ScriptLine['how'] =>
  text === 'phrase' || text === 'dictation' || text === 'foreman';

/** Reads `whole-job.tsv`. Throws on a line that is none: the file is part of the program. */
export const parseScript = (tsv: string): readonly ScriptLine[] =>
  tsv
    .trim()
    .split('\n')
    .slice(1)
    .map((line, index) => {
      const [file = '', how = '', step = '', say = '', then = ''] = line.split('\t');
      if (!isHow(how)) throw new Error(`whole-job line ${index + 2}: unknown kind "${how}"`);
      return { file, how, step, say, then: then === '' ? [] : then.split('; ') };
    });

type Answer = Extract<Happening, { type: 'answerGiven' }>['answer'];

const answerText = (answer: Answer): string | number => {
  switch (answer.kind) {
    case 'count':
      return answer.count;
    case 'choice':
      return answer.option;
    case 'check':
      return answer.passed ? 'passed' : 'failed';
  }
};

/** A happening in one line, without ids and reasons: "readingTaken coolant-drained 8.4 L". */
export const happeningText = (happening: Happening): string => {
  const words = (...all: readonly (string | number | undefined)[]): string =>
    [happening.type, ...all].filter((word) => word !== undefined).join(' ');
  switch (happening.type) {
    case 'jobOpened':
      return words(happening.procedure, happening.revision, happening.bay);
    case 'stepBegun':
    case 'readyGiven':
    case 'stepDone':
    case 'stepLeftOut':
    case 'stepReopened':
      return words(happening.step);
    case 'readingTaken':
      return words(happening.ask, happening.fastener, happening.value, happening.unit);
    case 'answerGiven':
      return words(happening.ask, answerText(happening.answer));
    case 'fastenersLaid':
      return words(happening.group, happening.tray);
    case 'kitLeftOver':
      return words(happening.kitItem, happening.count);
    case 'deviationNoted':
      return words(happening.kind);
    case 'jobReassigned':
      return words(happening.bay, happening.mechanic);
    case 'deviationDecided':
      return words(happening.decision);
    case 'looseEndSigned':
      return words(happening.looseEnd);
    case 'entryWithdrawn':
    case 'jobHeld':
    case 'jobResumed':
    case 'foremanCalled':
    case 'foremanAnswered':
    case 'jobClosed':
      return words();
  }
};
