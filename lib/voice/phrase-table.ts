import type { Intent, IntentKind } from './intent';

/** A phrase may hold one slot of each kind: `{value}` a number with or without unit, `{fastener}`, `{step}`. */
export type Slot = 'value' | 'fastener' | 'step';

interface RowFacts {
  /** The first is the one that the screen names. */
  readonly say: readonly [string, ...string[]];
}

/** What one set of phrases means: a fixed intent, or one that is filled from slots. */
export type PhraseRow =
  | (RowFacts & { readonly intent: Intent })
  | (RowFacts & { readonly filled: 'value' | 'reopen' | 'goTo' });

const row = (intent: Intent, ...say: [string, ...string[]]): PhraseRow => ({
  intent,
  say,
});

/** Everything that can be said. Grammar, understanding and the "you can say" list are all made from it. */
export const phraseTable: readonly PhraseRow[] = [
  row({ kind: 'next' }, 'next', 'done', 'next step', 'step done'),
  row({ kind: 'back' }, 'back', 'go back', 'previous step', 'step back'),
  row({ kind: 'repeat' }, 'repeat', 'say again', 'say that again', 'repeat that'),
  row({ kind: 'show', what: 'step' }, 'show step', 'show the step'),
  row({ kind: 'show', what: 'parts' }, 'show parts', 'show the parts', 'show me the parts'),
  row({ kind: 'show', what: 'order' }, 'show order', 'show the order', 'show me the order'),
  row({ kind: 'show', what: 'bolts' }, 'show bolts', 'show the bolts', 'show me the bolts'),
  row(
    { kind: 'show', what: 'caution' },
    'show caution',
    'show the caution',
    'show warning',
    'show the warning',
  ),
  row(
    { kind: 'show', what: 'ledger' },
    'show ledger',
    'show the ledger',
    'show loose ends',
    'show the loose ends',
  ),
  row({ kind: 'show', what: 'phrases' }, 'what can i say', 'show phrases', 'show commands'),
  {
    filled: 'value',
    say: [
      'torqued {value}',
      '{value}',
      'torque {value}',
      'tightened {value}',
      'measured {value}',
      '{fastener} torqued {value}',
      '{fastener} at {value}',
    ],
  },
  row({ kind: 'takeBack' }, 'take that back', 'take it back', 'take back that value'),
  row({ kind: 'yes' }, 'yes', 'correct', 'yes correct', 'yes that is right'),
  row({ kind: 'no' }, 'no', 'negative', 'no wrong', 'no that is wrong'),
  row({ kind: 'choice', option: 'reused' }, 'reused', 'part reused', 'used again'),
  row({ kind: 'choice', option: 'replaced' }, 'replaced', 'part replaced', 'new part fitted'),
  row({ kind: 'leftOver' }, 'left over', 'part left over', 'one left over'),
  row({ kind: 'check', passed: true }, 'check okay', 'check passed', 'check is okay'),
  row({ kind: 'check', passed: false }, 'check failed', 'failed the check', 'check has failed'),
  row({ kind: 'noteDeviation' }, 'note a deviation', 'note deviation', 'record a deviation'),
  row({ kind: 'leaveOut' }, 'leave out this step', 'leave this step out', 'skip this step'),
  row({ kind: 'reopen' }, 'reopen this step', 'open this step again'),
  { filled: 'reopen', say: ['reopen step {step}', 'open step {step} again'] },
  { filled: 'goTo', say: ['go to step {step}'] },
  row({ kind: 'hold', reason: 'parts' }, 'waiting for parts', 'hold for parts'),
  row(
    { kind: 'hold', reason: 'tool' },
    'waiting for a tool',
    'waiting for the tool',
    'hold for a tool',
  ),
  row(
    { kind: 'hold', reason: 'foreman' },
    'waiting for the foreman',
    'waiting for foreman',
    'hold for the foreman',
  ),
  row({ kind: 'hold', reason: 'approval' }, 'waiting for approval', 'hold for approval'),
  row({ kind: 'hold', reason: 'break' }, 'hold for a break', 'time for a break'),
  row({ kind: 'hold' }, 'hold the job', 'hold this job', 'put the job on hold'),
  row({ kind: 'resume' }, 'resume', 'resume the job', 'resume work'),
  row({ kind: 'callForeman' }, 'call the foreman', 'call foreman', 'get the foreman'),
  row({ kind: 'ready' }, 'ready', 'i am ready'),
  row({ kind: 'closeJob' }, 'close the job', 'close this job'),
];

export const rowKind = (phrase: PhraseRow): IntentKind =>
  'intent' in phrase ? phrase.intent.kind : phrase.filled;
