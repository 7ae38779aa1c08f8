'use client';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { v7 as newId } from 'uuid';
import {
  beginPractice,
  ownOf,
  personalVoice,
  practicePhrases,
  practise,
  toSay,
  worksOf,
  type KeptPractice,
  type PracticeRecord,
  type PracticeState,
} from '@/lib/practice';
import { everyPhrase, type Understanding, type VoiceContext } from '@/lib/voice';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { useEars } from '../microphone';
import { HearingBadge } from './hearing-badge';
import { hearingView } from './hearing-view';
import { PracticePhraseView } from './practice-phrase';
import { PracticeResults } from './practice-results';
import { changesWords } from './practice-words';
import type { VoiceLink } from './voice-link';

/** How it was heard stands so long before the next phrase comes by itself. */
const seenMs = 1_800;

/** Everything may be said, so that what a voice is mistaken for shows; and the words of one's own. */
const contextOf = (state: PracticeState | undefined): VoiceContext => ({
  ...everyPhrase,
  voice: {
    own: state === undefined ? [] : ownOf(state),
    leastConfidence: 0,
    leastNumberConfidence: 0,
    readBack: [],
  },
});

/** What was asked when it was said: a try that began before is of something else. */
const placeOf = (state: PracticeState | undefined): string => {
  if (state === undefined || state.at.kind === 'results') return 'nothing';
  const seen = state.at.last === undefined ? 'asks' : 'shows';
  const tries =
    state.at.kind === 'own' ? state.at.tries.length : state.phrases[state.at.index]?.tries.length;
  return `${state.at.kind} ${toSay(state) ?? ''} ${String(tries)} ${seen}`;
};

const recordOf = (state: PracticeState, id: string, model: string): PracticeRecord => ({
  id,
  model,
  phrases: [...state.phrases],
  own: [...state.own],
});

function Before({ practice }: { readonly practice: KeptPractice }) {
  const tried = practice.phrases.filter(({ tries }) => tries.length > 0);
  const work = tried.filter((phrase) => worksOf(phrase) === 'works');
  return (
    <section aria-label="Your last practice" className="flex flex-col gap-1">
      <h2 className="text-glance font-bold">Your last practice, {practice.at.slice(0, 10)}</h2>
      <p>
        {work.length} of {tried.length} worked, with the speech model {practice.model}.
      </p>
      <ul>
        {changesWords(personalVoice(practice)).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}

function Intro({
  before,
  onBegin,
}: {
  readonly before: KeptPractice | undefined;
  readonly onBegin: () => void;
}) {
  return (
    <div className="flex flex-col items-start gap-6">
      <p className="max-w-[70rem] text-read">
        About two minutes: say {practicePhrases.length} phrases as you say them at work, from where
        you stand. You see which work for your voice, and what to say for those that do not.
      </p>
      <p className="max-w-[70rem] text-body text-quiet">
        What was understood is kept with your name; the sound is not. It never makes the kiosk take
        a value more easily.
      </p>
      <Button kind="main" glyph="speak" onPress={onBegin}>
        Begin
      </Button>
      {before === undefined ? null : <Before practice={before} />}
    </div>
  );
}

/** The two-minute practice of one person's voice. It has ears of its own; nothing that is said acts on a job. */
export function PracticeScreen({
  name,
  before,
  footKey,
  link,
  onKept,
  onClose,
}: {
  readonly name: string;
  readonly before: KeptPractice | undefined;
  readonly footKey: string;
  readonly link: Pick<VoiceLink, 'model' | 'keep'>;
  /** The server has it. */
  readonly onKept: () => void;
  readonly onClose: () => void;
}) {
  const [state, setState] = useState<PracticeState>();
  const [id, setId] = useState(() => newId());
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const send = useCallback((input: Parameters<typeof practise>[1]): void => {
    setState((now) => (now === undefined ? now : practise(now, input)));
  }, []);
  const context = useMemo(() => contextOf(state), [state]);
  const onUnderstood = useCallback(
    (understanding: Understanding) => {
      send({ kind: 'heard', understanding });
    },
    [send],
  );
  const { ears, state: earState } = useEars(context, placeOf(state), onUnderstood);
  const shows = state !== undefined && state.at.kind !== 'results' && state.at.last !== undefined;
  useEffect(() => {
    if (!shows) return;
    const timer = setTimeout(() => {
      send({ kind: 'goOn' });
    }, seenMs);
    return () => {
      clearTimeout(timer);
    };
  }, [shows, send]);
  const forward = useCallback(() => {
    send({ kind: shows ? 'goOn' : 'skip' });
  }, [send, shows]);
  useEffect(() => {
    const down = (event: KeyboardEvent): void => {
      if (event.altKey || event.ctrlKey || event.metaKey || event.repeat) return;
      if (event.key === 'Escape') onClose();
      else if (['ArrowRight', 'PageDown', footKey].includes(event.key)) {
        event.preventDefault();
        forward();
      }
    };
    window.addEventListener('keydown', down);
    return () => {
      window.removeEventListener('keydown', down);
    };
  }, [forward, onClose, footKey]);

  const begin = (): void => {
    setState(beginPractice());
    setId(newId());
    setProblem(undefined);
    ears.start();
  };
  const keep = async (practice: PracticeState): Promise<void> => {
    setBusy(true);
    const model = await link.model();
    const kept = model.ok ? await link.keep(recordOf(practice, id, model.value)) : model;
    setBusy(false);
    setProblem(kept.ok ? undefined : kept.error);
    if (kept.ok) onKept();
  };
  const hearing = (
    <HearingBadge
      hearing={hearingView(earState, 'phrases')}
      onPress={() => {
        ears.start();
      }}
    />
  );
  const deaf = earState.kind === 'failed' ? earState.text : undefined;
  return (
    <Panel
      whole
      title={`Voice practice, ${name}`}
      lead={deaf}
      actions={
        <Button glyph="back" keys="Esc" onPress={onClose}>
          {state === undefined ? 'Back' : 'Leave, keep nothing'}
        </Button>
      }
    >
      {state === undefined ? (
        <Intro before={before} onBegin={begin} />
      ) : state.at.kind === 'results' ? (
        <PracticeResults
          state={state}
          voice={personalVoice(recordOf(state, id, ''))}
          problem={problem}
          busy={busy}
          onChoose={(insteadOf, say) => {
            send({ kind: 'choose', insteadOf, say });
          }}
          onDrop={(insteadOf) => {
            send({ kind: 'drop', insteadOf });
          }}
          onKeep={() => {
            void keep(state);
          }}
          onAgain={begin}
        />
      ) : (
        <PracticePhraseView
          state={state}
          hearing={hearing}
          onGoOn={forward}
          onSkip={forward}
          onEnd={() => {
            send({ kind: 'end' });
          }}
        />
      )}
    </Panel>
  );
}
