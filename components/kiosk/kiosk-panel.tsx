'use client';
import { useEffect, useState, type ReactNode } from 'react';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import type { HearingView } from './hearing-badge';
import { CallWordChoice } from './call-word-choice';
import { keyText } from './key-of';
import { useKioskVoice } from './kiosk-voice';
import { SpeakingBack } from './speaking-back';
import type { KioskSettings } from './kiosk-settings';
import { ShellNote } from './shell-note';
import { ThemeSwitch } from './theme-switch';

function Row({ title, children }: { title: string; children: ReactNode }) {
  return (
    <section aria-label={title} className="flex flex-col gap-3 border-t-2 border-line pt-4">
      <h3 className="text-glance font-bold">{title}</h3>
      {children}
    </section>
  );
}

function Switch({
  on,
  label,
  onChange,
}: {
  on: boolean;
  label: string;
  onChange: (on: boolean) => void;
}) {
  return (
    <Button
      kind={on ? 'chosen' : 'plain'}
      pressed={on}
      glyph={on ? 'tick' : 'cross'}
      onPress={() => {
        onChange(!on);
      }}
    >
      {label}
    </Button>
  );
}

/** Waits for one key and takes it as the foot switch's. */
function FootSwitch({ footKey, onKey }: { footKey: string; onKey: (key: string) => void }) {
  const [learning, setLearning] = useState(false);
  useEffect(() => {
    if (!learning) return;
    const learn = (event: KeyboardEvent): void => {
      if (event.key === 'Tab' || event.key === 'Escape') return;
      event.preventDefault();
      event.stopImmediatePropagation();
      setLearning(false);
      onKey(event.key);
    };
    window.addEventListener('keydown', learn, true);
    return () => {
      window.removeEventListener('keydown', learn, true);
    };
  }, [learning, onKey]);
  return (
    <div className="flex flex-wrap items-center gap-4">
      <p>
        Foot switch sends <kbd className="font-bold">{keyText(footKey)}</kbd>. Short: go on or yes.
        Long: back or no.
      </p>
      <Button
        pressed={learning}
        kind={learning ? 'chosen' : 'plain'}
        onPress={() => {
          setLearning(!learning);
        }}
      >
        {learning ? 'Press the foot switch now' : 'Teach another switch'}
      </Button>
    </div>
  );
}

/** How a phrase must begin here; nothing where no bay is known. */
function CallRow() {
  const { bay, link, onCallWord } = useKioskVoice();
  return bay === undefined ? null : (
    <Row title="How it is called">
      <CallWordChoice bay={bay} link={link} onKept={onCallWord} />
    </Row>
  );
}

export interface KioskPanelProps {
  readonly hearing: HearingView;
  /** The whole sentence where the ears have failed. */
  readonly trouble: string | undefined;
  readonly settings: KioskSettings;
  readonly voiceAvailable: boolean;
  readonly onSettings: (settings: KioskSettings) => void;
  readonly onListen: () => void;
  readonly onClose: () => void;
  /** Recordings of a demo mechanic, where the demo has them. */
  readonly demo?: ReactNode;
  /** What could not be stored. */
  readonly aside?: ReactNode;
  /** How the whole shop works, where a foreman is signed on. */
  readonly shop?: ReactNode;
}

/** How this kiosk hears, sounds and looks. */
export function KioskPanel(props: KioskPanelProps) {
  const { hearing, settings, onSettings } = props;
  const change = (part: Partial<KioskSettings>): void => {
    onSettings({ ...settings, ...part });
  };
  return (
    <Panel title="This kiosk" onClose={props.onClose}>
      <div className="flex flex-col gap-6 pr-3">
        <Row title="Hearing">
          <p role="status" className="text-glance">
            {props.trouble ?? hearing.text}
          </p>
          <div className="flex flex-wrap gap-3">
            {hearing.ears === 'off' || hearing.ears === 'failed' ? (
              <Button kind="main" glyph="ear" onPress={props.onListen}>
                {hearing.ears === 'off' ? 'Listen' : 'Listen again'}
              </Button>
            ) : null}
            <Switch
              on={settings.listens}
              label="Listen by itself"
              onChange={(listens) => {
                change({ listens });
              }}
            />
          </div>
          <p className="text-body text-quiet">
            What is said is understood on this machine and nowhere else. Only the sound of a
            dictated reason is kept, with the reason.
          </p>
        </Row>
        {props.demo}
        <Row title="Answers aloud">
          <SpeakingBack
            speaksBack={settings.speaksBack}
            voiceAvailable={props.voiceAvailable}
            onChange={(speaksBack) => {
              change({ speaksBack });
            }}
          />
        </Row>
        <CallRow />
        <Row title="Light">
          <ThemeSwitch />
        </Row>
        <Row title="Without the server">
          <ShellNote />
          {props.aside}
        </Row>
        {props.shop === undefined ? null : <Row title="The whole shop">{props.shop}</Row>}
        <Row title="Foot switch">
          <FootSwitch
            footKey={settings.footKey}
            onKey={(footKey) => {
              change({ footKey });
            }}
          />
        </Row>
      </div>
    </Panel>
  );
}
