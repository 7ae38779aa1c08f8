'use client';
import { useState } from 'react';
import type { Bay } from '@/lib/shop';
import { callRules, callWords } from '@/lib/voice';
import { Button } from '../design/button';
import type { VoiceLink } from './voice-link';

/** By which word this bay's kiosk is called; only who may set it has the choice. */
export function CallWordChoice({
  bay: { id, callWord },
  link,
  onKept,
}: {
  readonly bay: Bay;
  /** Absent: whoever is signed on may not choose. */
  readonly link?: Pick<VoiceLink, 'setCallWord'> | undefined;
  /** The server has it. */
  readonly onKept?: ((bay: Bay) => void) | undefined;
}) {
  const [problem, setProblem] = useState<string>();
  const choose = async (word: Bay['callWord']): Promise<void> => {
    const kept = await link?.setCallWord(id, word);
    setProblem(kept?.ok === false ? kept.error : undefined);
    if (kept?.ok === true) onKept?.(kept.value);
  };
  return (
    <>
      <p role="status">
        {callWord === undefined
          ? 'Every phrase acts: this kiosk has no call word.'
          : `A phrase acts only behind “${callWord}”: “${callWord}, next”. For ${callRules.afterActS} seconds after a phrase, and ${callRules.afterQuestionS} after a question, it needs none.`}
      </p>
      {link !== undefined ? (
        <div className="flex flex-wrap gap-3" role="group" aria-label="Call word">
          {[undefined, ...callWords].map((word) => (
            <Button
              key={word ?? 'none'}
              kind={callWord === word ? 'chosen' : 'plain'}
              pressed={callWord === word}
              onPress={() => {
                void choose(word);
              }}
              {...(callWord === word ? { glyph: 'tick' as const } : {})}
            >
              {word === undefined ? 'No call word' : `“${word}”`}
            </Button>
          ))}
        </div>
      ) : (
        <p className="text-body text-quiet">A foreman who is signed on here can change that.</p>
      )}
      <p role="alert" className="text-body font-bold text-bad empty:hidden">
        {problem}
      </p>
    </>
  );
}
