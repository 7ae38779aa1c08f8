import type { IntentKind } from '../voice/intent';
import type { KioskState } from './state';

const always: readonly IntentKind[] = ['repeat', 'callForeman', 'show'];

/** Kinds of intents that are valid now; the grammar is built from them and always holds all numbers. */
export const validIntents = (state: KioskState): readonly IntentKind[] => {
  const { question, job } = state;
  if (job.phase === 'closed') return ['show'];
  if (job.phase === 'held' && question === undefined) return [...always, 'resume'];
  switch (question?.kind) {
    case 'value':
    case 'whichValue':
      return ['yes', 'no', 'takeBack', 'value', 'ambiguousValue', 'repeat', 'callForeman'];
    case 'confirm':
      return ['yes', 'no', 'takeBack', 'repeat', 'callForeman'];
    case 'reason':
      return ['no', 'takeBack', 'repeat', 'callForeman'];
    case undefined:
      return [
        ...always,
        'next',
        'back',
        'value',
        'ambiguousValue',
        'takeBack',
        'ready',
        'choice',
        'check',
        'noteDeviation',
        'leaveOut',
        'reopen',
        'leftOver',
        'hold',
        'goTo',
        'closeJob',
      ];
  }
};
