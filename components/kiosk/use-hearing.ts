'use client';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { v7 as newId } from 'uuid';
import { voiceContext, type KioskInput, type KioskState, type Via } from '@/lib/kiosk';
import { doubts, type Understanding, type VoiceContext } from '@/lib/voice';
import { useEars, type Ears, type EarState, type Note } from '../microphone';
import type { EarDuty } from './hearing-view';
import { useKioskVoice } from './kiosk-voice';
import type { KioskLink } from './link';
import { placeOf } from './place';

type Understood = Extract<Understanding, { kind: 'intent' }>;

const spoken = ({ said, confidence, certainty, why }: Understood): Via => ({
  by: 'voice',
  said,
  confidence,
  certainty,
  ...(why === undefined ? {} : { why }),
});

/** What the kiosk does with an understanding; nothing for mere noise. */
export const inputOf = (understanding: Understanding): KioskInput | undefined => {
  if (understanding.kind === 'intent')
    return { kind: 'act', intent: understanding.intent, via: spoken(understanding) };
  const { said, why } = understanding;
  return said.trim() === '' || why === doubts.notCalled
    ? undefined
    : { kind: 'notUnderstood', said, why };
};

/** Said instead of a reason, these end the question. */
const refusals = ['no', 'negative', 'take that back', 'take it back'];

/** Words of a note below this are marked as unsure (assumption: a dictation of many words is rarely sure of each). */
const sureOfWord = 0.7;

/** The input that a note makes; `clip` is the id under which its sound was kept. */
export const inputOfNote = (note: Note, clip: string | undefined): KioskInput | undefined => {
  const confidence = Math.min(...note.words.map((word) => word.confidence), 1);
  const unsure = note.words.flatMap((word, at) => (word.confidence < sureOfWord ? [at] : []));
  const via: Via = { by: 'voice', said: note.text, confidence, certainty: 'sure', unsure };
  if (refusals.includes(note.text.trim())) return { kind: 'act', intent: { kind: 'no' }, via };
  if (note.text.trim() === '') return undefined;
  return { kind: 'reason', text: note.text, via, ...(clip === undefined ? {} : { clip }) };
};

export interface Hearing {
  readonly ears: Ears;
  readonly state: EarState;
  readonly duty: EarDuty;
  /** A number just heard that may still go on: for showing, not yet for acting. */
  readonly forming: string | undefined;
  /** Takes a reason down, keeps its sound, and sends both. */
  readonly dictate: () => void;
  /** What the kiosk itself says, while it does. */
  readonly setSpeaking: (text: string | undefined) => void;
}

/**
 * The kiosk's ears: what is understood goes to `send`, and reasons are taken down with their sound. `onBargeIn`: somebody
 * speaks up while the kiosk does.
 */
export const useHearing = (
  state: KioskState,
  send: (input: KioskInput) => void,
  link: KioskLink,
  onBargeIn?: () => void,
): Hearing => {
  const [speaking, setMuted] = useState(false);
  const [noting, setNoting] = useState(false);
  const [forming, setForming] = useState<string>();
  const asksReason = state.question?.kind === 'reason';
  const duty: EarDuty = speaking ? 'speaking' : noting && asksReason ? 'reason' : 'phrases';
  const { voice, bay } = useKioskVoice();
  const callWord = bay?.callWord;
  const context = useMemo<VoiceContext>(
    () => ({
      ...voiceContext(state),
      ...(voice === undefined ? {} : { voice }),
      ...(callWord === undefined ? {} : { callWord }),
    }),
    [state, voice, callWord],
  );
  const place = placeOf(state);
  const onUnderstood = useCallback(
    (understanding: Understanding) => {
      setForming(undefined);
      const input = inputOf(understanding);
      if (input !== undefined) send(input);
    },
    [send],
  );
  const onPreview = useCallback(({ said }: Understanding) => {
    setForming(said);
  }, []);
  const { ears, state: earState } = useEars(context, place, onUnderstood, onPreview, onBargeIn);
  const now = useRef(place);
  useEffect(() => {
    now.current = place;
  }, [place]);

  const take = useCallback(
    async (asked: string): Promise<void> => {
      setNoting(true);
      const note = await ears.takeNote();
      setNoting(false);
      // Answered by hand meanwhile, or the screen went on.
      if (note === undefined || now.current !== asked) return;
      const id = newId();
      const kept = note.text.trim() === '' ? undefined : await link.keepClip(id, note.clip);
      const input = inputOfNote(note, kept?.ok === true ? id : undefined);
      if (input !== undefined && now.current === asked) send(input);
    },
    [ears, link, send],
  );

  // The question is on the screen only after this: its own place is read then.
  const [dictations, setDictations] = useState(0);
  const dictate = useCallback(() => {
    setDictations((count) => count + 1);
  }, []);
  useEffect(() => {
    if (dictations > 0) void take(now.current);
  }, [dictations, take]);

  // Whatever ends the question ends the note.
  useEffect(() => {
    if (!asksReason && noting) ears.endNote();
  }, [asksReason, noting, ears]);

  const setSpeaking = useCallback(
    (text: string | undefined) => {
      ears.setMuted(text !== undefined, text);
      setMuted(text !== undefined);
    },
    [ears],
  );
  return { ears, state: earState, duty, forming, dictate, setSpeaking };
};
