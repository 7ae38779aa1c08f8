'use client';
import { useState } from 'react';
import type { Person } from '@/lib/people';
import type { Bay } from '@/lib/shop';
import { ageWords, cardsInOrder, freshness } from '@/lib/wall';
import { Button } from '../design/button';
import { PersonChoice } from '../kiosk/person-choice';
import { PinEntry } from '../kiosk/pin-entry';
import { useClock, useWall } from '../wall/use-wall';
import { Board } from './board';
import { signForemanOff, signForemanOn, type ForemanSignedOn } from './foreman-link';
import { JobSheet } from './job-sheet';

export interface ForemanProps {
  readonly bays: readonly Bay[];
  readonly people: readonly Person[];
  /** As the server knows this screen when the page is opened. */
  readonly signedOn: ForemanSignedOn | undefined;
  /** The bay to open at once, as the wall leads here. */
  readonly bay: string | undefined;
  /** PINs of the demo people, where the shop is the demo. */
  readonly hint: string | undefined;
}

function SignOn({
  foremen,
  hint,
  onSignedOn,
}: {
  readonly foremen: readonly Person[];
  readonly hint: string | undefined;
  readonly onSignedOn: (me: ForemanSignedOn) => void;
}) {
  const [person, setPerson] = useState<Person>();
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  return (
    <section aria-labelledby="who" className="flex flex-col gap-5">
      <h1 id="who" className="text-read font-bold">
        Which foreman?
      </h1>
      {person === undefined ? (
        <PersonChoice people={foremen} onPerson={setPerson} />
      ) : (
        <PinEntry
          name={person.name}
          problem={problem}
          busy={busy}
          onPin={(pin) => {
            setBusy(true);
            void signForemanOn(person.id, pin).then((signed) => {
              setBusy(false);
              if (signed.ok) onSignedOn(signed.value);
              else setProblem(signed.error);
            });
          }}
          onCancel={() => {
            setPerson(undefined);
            setProblem(undefined);
          }}
        />
      )}
      {hint === undefined ? null : <p className="text-note text-quiet">{hint}</p>}
    </section>
  );
}

function SignedOn({
  me,
  bays,
  people,
  bay,
  onOff,
}: ForemanProps & { readonly me: ForemanSignedOn; readonly onOff: () => void }) {
  const wall = useWall();
  const nowMs = useClock(1_000);
  const [open, setOpen] = useState(bay);
  const cards = cardsInOrder(wall);
  const fresh = nowMs === undefined ? undefined : freshness(wall.heardAtMs, nowMs);
  const shopMs = (nowMs ?? 0) + wall.aheadMs;
  const card = cards.find((one) => one.bay.id === open);
  const free = new Set(cards.filter(({ job }) => job === undefined).map((one) => one.bay.id));
  return (
    <>
      {fresh?.stale === true ? (
        <p role="alert" className="border-b-4 border-bad font-bold text-bad">
          No news for {ageWords(fresh.ageMs)}: this is how it was.
        </p>
      ) : null}
      {card?.job === undefined ? (
        <>
          <header className="flex flex-wrap items-center justify-between gap-3">
            <h1 className="text-read font-bold">Foreman</h1>
            <p>{me.person.name}</p>
            <a href="/review" className="flex min-h-glove items-center underline">
              Review
            </a>
            <Button onPress={onOff}>Sign off</Button>
          </header>
          <Board cards={cards} nowMs={shopMs} onOpen={setOpen} />
          <p className="text-note text-quiet">
            {fresh === undefined ? 'Asking the server …' : `Data ${ageWords(fresh.ageMs)} old`}
          </p>
        </>
      ) : (
        <JobSheet
          key={card.job.id}
          card={card}
          jobCard={card.job}
          me={me}
          bays={bays}
          freeBays={free}
          people={people}
          nowMs={shopMs}
          onBack={() => {
            setOpen(undefined);
          }}
          onSignedOff={onOff}
        />
      )}
    </>
  );
}

/** The foreman's own screen: who needs somebody, and what to do about it. */
export function Foreman(props: ForemanProps) {
  const [me, setMe] = useState(props.signedOn);
  return (
    <main className="mx-auto flex min-h-dvh max-w-[80rem] flex-col gap-6 p-4 wide:p-8">
      {me === undefined ? (
        <SignOn
          foremen={props.people.filter(({ role }) => role === 'foreman')}
          hint={props.hint}
          onSignedOn={setMe}
        />
      ) : (
        <SignedOn
          {...props}
          me={me}
          onOff={() => {
            void signForemanOff().then(() => {
              setMe(undefined);
            });
          }}
        />
      )}
    </main>
  );
}
