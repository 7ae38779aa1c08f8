'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { JobState } from '@/lib/job';
import { toolRuns } from '@/lib/speaking';
import type { Act, KioskEffect, KioskInput, KioskState } from '@/lib/kiosk';
import type { Ears, EarState } from '../microphone';
import type { DemoVoices } from './demo-mechanic';
import type { HearingView } from './hearing-badge';
import { hearingView } from './hearing-view';
import type { OutboxRunner, OutboxView } from './keep/outbox-runner';
import type { KioskSettings } from './kiosk-settings';
import type { KioskLink } from './link';
import { useDemo, type DemoMechanic } from './use-demo';
import { useHearing } from './use-hearing';
import { useKioskVoice } from './kiosk-voice';
import { useJob, type Kept, type Worker } from './use-job';
import { useKeys } from './use-keys';
import { useSettings } from './use-settings';
import { useSound } from './use-sound';

/** What lies over the job for a moment; nothing of it is kept. */
export type Overlay =
  | { readonly kind: 'kiosk' | 'foreman' | 'person' }
  | { readonly kind: 'pad'; readonly digit: string };

export interface KioskParts {
  readonly job: JobState;
  readonly kept: Kept;
  readonly worker: Worker;
  readonly link: KioskLink;
  readonly demo: DemoVoices | undefined;
  readonly onSignOnNeeded: () => void;
  /** Something else has the screen: no key and no word is for the job. */
  readonly away: boolean;
}

export interface RunningKiosk {
  readonly state: KioskState;
  readonly send: (input: KioskInput) => void;
  readonly act: (act: Act, by: 'touch' | 'key' | 'foot') => void;
  /** What is not yet stored at the server. */
  readonly outbox: OutboxView;
  readonly runner: () => OutboxRunner | undefined;
  /** The other kiosk at which the job is in work, until it is taken over here. */
  readonly elsewhere: JobState['atKiosk'];
  readonly takeOver: () => void;
  readonly problem: string | undefined;
  readonly overlay: Overlay | undefined;
  readonly setOverlay: (overlay: Overlay | undefined) => void;
  readonly settings: KioskSettings;
  readonly setSettings: (settings: KioskSettings) => void;
  readonly ears: Ears;
  readonly hearing: HearingView;
  /** A number being heard that may still go on. */
  readonly forming: string | undefined;
  /** Why nothing can be heard, and what to do. */
  readonly deaf: string | undefined;
  /** The same where the kiosk is to listen. */
  readonly silent: string | undefined;
  /** The one line about what is wrong now. */
  readonly trouble: string | undefined;
  /** Takes a reason down again; undefined while it is being taken, or where nothing can be heard. */
  readonly dictate: (() => void) | undefined;
  readonly dictating: boolean;
  readonly voiceAvailable: boolean;
  readonly demo: DemoMechanic;
}

const toolNow = (ears: EarState): boolean =>
  ears.kind === 'listening' &&
  ears.noise !== undefined &&
  ears.noise !== 'unwatched' &&
  toolRuns(ears.noise);

/** The machine with everything that leads into it and everything that it does to the outside. */
export const useKiosk = ({
  job,
  kept,
  worker,
  link,
  demo,
  onSignOnNeeded,
  away,
}: KioskParts): RunningKiosk => {
  const [settings, setSettings, settingsKnown] = useSettings();
  const [overlay, setOverlay] = useState<Overlay>();
  const perform = useRef<(effect: Exclude<KioskEffect, { kind: 'store' }>) => void>(undefined);
  const { state, send, outbox, runner, problem } = useJob(
    job,
    kept,
    worker,
    link,
    (effect) => perform.current?.(effect),
    onSignOnNeeded,
  );
  const { bay } = useKioskVoice();
  const quiet = useRef<() => void>(undefined);
  const onBargeIn = useCallback(() => quiet.current?.(), []);
  const [takenSeq, setTakenSeq] = useState(0);
  const { atKiosk, phase } = state.job;
  const elsewhere =
    phase === 'running' && atKiosk?.device !== worker.device && (atKiosk?.seq ?? 0) > takenSeq
      ? atKiosk
      : undefined;
  const takeOver = useCallback(() => {
    setTakenSeq(atKiosk?.seq ?? 0);
  }, [atKiosk?.seq]);
  /** No key and no word is for the job. */
  const stopped = away || outbox.conflict !== undefined || elsewhere !== undefined;
  const hearing = useHearing(state, send, link, onBargeIn);
  const { ears, dictate } = hearing;
  const {
    perform: sound,
    hush,
    whenQuiet,
    voiceAvailable,
  } = useSound(settings.speaksBack, toolNow(hearing.state), hearing.setSpeaking);
  useEffect(() => {
    quiet.current = hush;
    perform.current = (effect) => {
      if (effect.kind === 'dictate') void whenQuiet().then(dictate);
      else sound(effect);
    };
  }, [sound, whenQuiet, dictate, hush]);
  useEffect(() => {
    if (!settingsKnown) return;
    if (settings.listens && !stopped) ears.start();
    else ears.stop();
  }, [ears, settings.listens, settingsKnown, stopped]);

  const act = useCallback<RunningKiosk['act']>(
    (chosen, by) => {
      hush();
      // A finger finds its kind of deviation or hold in a list; a key or a phrase goes straight to the reason.
      if (by === 'touch' && chosen.name === 'deviation') send({ kind: 'open', view: 'deviation' });
      else if (by === 'touch' && chosen.name === 'hold') send({ kind: 'open', view: 'hold' });
      else send({ kind: 'act', intent: chosen.intent, via: { by } });
    },
    [send, hush],
  );
  const onDigit = useCallback((digit: string) => {
    setOverlay({ kind: 'pad', digit });
  }, []);
  const onEscape = useCallback(() => {
    if (overlay !== undefined) setOverlay(undefined);
    else if (state.question === undefined) send({ kind: 'open', view: 'step' });
    else send({ kind: 'act', intent: { kind: 'no' }, via: { by: 'key' } });
  }, [overlay, state.question, send]);
  const ownKeys =
    overlay !== undefined || (state.view === 'adapter' && state.question === undefined);
  const attention = stopped ? 'none' : ownKeys ? 'escape' : 'all';
  useKeys(state, settings.footKey, attention, { onAct: act, onDigit, onEscape });

  const dictating = hearing.duty === 'reason';
  const deaf = hearing.state.kind === 'failed' ? hearing.state.text : undefined;
  const silent = settings.listens ? deaf : undefined;
  return {
    state,
    send,
    act,
    outbox,
    runner,
    elsewhere,
    takeOver,
    problem,
    overlay,
    setOverlay,
    settings,
    setSettings,
    ears,
    hearing: hearingView(hearing.state, hearing.duty, bay?.callWord),
    forming: hearing.forming,
    deaf,
    silent,
    trouble: problem ?? outbox.trouble ?? silent,
    dictate: dictating || hearing.state.kind !== 'listening' ? undefined : dictate,
    dictating,
    voiceAvailable,
    demo: useDemo(demo, state, ears),
  };
};
