import { Glyph } from '../design/glyph';
import type { SoundView } from './sound-words';

/** What the ears are doing, as the header shows it. */
export interface HearingView {
  readonly ears: 'off' | 'loading' | 'listening' | 'waiting' | 'failed';
  /** Level of what comes in, 0–1. */
  readonly level: number;
  /** One short sentence: "Listening", "Loading the voice model, 40 %". */
  readonly text: string;
  /** 0–1 while loading. */
  readonly progress?: number | undefined;
  /** What the bay sounds like; `sound.unheard` is for whoever looks after several bays. */
  readonly sound?: SoundView | undefined;
}

const bars = 14;

/** Level as bars of growing height: seen from the vehicle, it says whether the kiosk hears anything at all. */
function Level({ level, on }: { level: number; on: boolean }) {
  const lit = on ? Math.round(Math.min(1, Math.max(0, level)) * bars) : 0;
  return (
    <svg
      viewBox={`0 0 ${bars * 8} 32`}
      preserveAspectRatio="xMinYMid meet"
      aria-hidden="true"
      className="h-[2.2rem]"
    >
      {Array.from({ length: bars }, (_, index) => (
        <rect
          key={index}
          x={index * 8}
          y={24 - index * 1.7}
          width="5.5"
          height={8 + index * 1.7}
          className={index < lit ? 'fill-act' : 'fill-line'}
        />
      ))}
    </svg>
  );
}

/** What the bay sounds like: a word and a sign beside the meter. */
function BaySound({ sound }: { sound: SoundView }) {
  return (
    <span
      className={`flex min-w-0 items-center gap-1 text-note ${sound.loud ? 'font-bold text-unsure' : 'text-quiet'}`}
    >
      <Glyph name={sound.glyph} />
      <span className="truncate">{sound.text}</span>
    </span>
  );
}

export function HearingBadge({ hearing, onPress }: { hearing: HearingView; onPress: () => void }) {
  const hears = hearing.ears === 'listening' || hearing.ears === 'waiting';
  return (
    <button
      type="button"
      onClick={onPress}
      className="flex min-h-glove items-center gap-4 rounded-block border-2 border-edge bg-surface px-4 text-left"
    >
      <Glyph
        name={hears ? 'ear' : 'earOff'}
        className={hearing.ears === 'failed' ? 'text-bad' : 'text-act'}
      />
      <span className="flex w-[18rem] flex-col">
        <span className="truncate text-note font-bold">{hearing.text}</span>
        {hearing.ears === 'loading' ? (
          <progress
            className="meter h-[1rem] w-full"
            max={1}
            value={hearing.progress}
            aria-label="Loading the voice model"
          />
        ) : (
          <span className="flex items-center gap-2">
            <Level level={hearing.level} on={hearing.ears === 'listening'} />
            {hearing.sound === undefined ? null : <BaySound sound={hearing.sound} />}
          </span>
        )}
      </span>
    </button>
  );
}
