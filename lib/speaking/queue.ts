/** What the kiosk says and is about to say. Times in ms of one clock. */
export interface Speaking {
  readonly saying?: { readonly text: string; readonly sinceMs: number };
  /** Held back by a tool; only ever the newest. */
  readonly waiting?: { readonly text: string; readonly sinceMs: number };
  /** A tool is too loud to speak against. */
  readonly tool: boolean;
}

export type SpeakingInput =
  | { readonly kind: 'say'; readonly text: string; readonly nowMs: number }
  | { readonly kind: 'tool'; readonly runs: boolean; readonly nowMs: number }
  /** What was said is over. */
  | { readonly kind: 'ended' }
  /** Somebody acts or begins to speak: it is quiet at once, and what was to come is dropped. */
  | { readonly kind: 'hush' };

export type SpeakingEffect =
  { readonly kind: 'speak'; readonly text: string } | { readonly kind: 'stop' };

export interface SpeakingStep {
  readonly state: Speaking;
  readonly effects: readonly SpeakingEffect[];
}

/** What waited so long is no news any more. Our choice, no source. */
export const staleAfterMs = 6_000;

export const silent: Speaking = { tool: false };

const stop = ({ saying }: Speaking): readonly SpeakingEffect[] =>
  saying === undefined ? [] : [{ kind: 'stop' }];

const say = (state: Speaking, text: string, nowMs: number): SpeakingStep => {
  const news = { text, sinceMs: nowMs };
  if (state.tool) return { state: { tool: true, waiting: news }, effects: stop(state) };
  return {
    state: { tool: false, saying: news },
    effects: [...stop(state), { kind: 'speak', text }],
  };
};

const toolChanged = (state: Speaking, runs: boolean, nowMs: number): SpeakingStep => {
  if (runs) {
    // Cut off, it has not been heard: it waits like what comes anew.
    const waiting = state.waiting ?? state.saying;
    return {
      state: { tool: true, ...(waiting === undefined ? {} : { waiting }) },
      effects: stop(state),
    };
  }
  const { waiting } = state;
  const { tool: _over, waiting: _said, ...rest } = state;
  if (waiting === undefined || nowMs - waiting.sinceMs > staleAfterMs)
    return { state: { ...rest, tool: false }, effects: [] };
  return {
    state: { tool: false, saying: waiting },
    effects: [{ kind: 'speak', text: waiting.text }],
  };
};

/**
 * When the kiosk speaks: one thing at a time, the newest; never while a tool runs, and not what is stale by then. Pure;
 * the effects are for the voice.
 */
export const speakNext = (state: Speaking, input: SpeakingInput): SpeakingStep => {
  switch (input.kind) {
    case 'say':
      return say(state, input.text, input.nowMs);
    case 'tool':
      return input.runs === state.tool
        ? { state, effects: [] }
        : toolChanged(state, input.runs, input.nowMs);
    case 'ended': {
      const { saying: _said, ...rest } = state;
      return { state: rest, effects: [] };
    }
    case 'hush':
      return { state: { tool: state.tool }, effects: stop(state) };
  }
};
