import { endWords, type BayCard, type JobCard } from '@/lib/wall';
import { clockText, durationText } from '../design/duration';
import { answeredNow } from './signs';

/** Time on the job up to now, ms. */
const spentMs = ({ spentMs: before, runningSince }: JobCard, nowMs: number): number =>
  before + (runningSince === undefined ? 0 : Math.max(0, nowMs - Date.parse(runningSince)));

/** "1 h 05 of 2 h 10 · by 15:05": the bound alone, where there is room for one. */
export const timeLine = (job: JobCard, nowMs: number): string => {
  const spent = `${durationText(spentMs(job, nowMs))} of ${durationText(job.bookMs)}`;
  return job.finish === undefined ? spent : `${spent} · by ${clockText(job.finish.safeAt)}`;
};

const verdictWords: Readonly<Record<NonNullable<JobCard['lastTorque']>['verdict'], string>> = {
  inSpec: '✓ in spec',
  notProvable: '? not provable',
  outOfSpec: '✕ out of spec',
  noFigure: 'no figure',
};

function Fact({ name, children }: { readonly name: string; readonly children: string }) {
  return (
    <div className="flex gap-x-3">
      <dt className="w-[8.2rem] shrink-0 opacity-80">{name}</dt>
      <dd className="min-w-0 grow">{children}</dd>
    </div>
  );
}

/** Everything else that the wall knows of a job, for who comes near. */
export function JobFacts({
  card,
  job,
  nowMs,
}: {
  readonly card: BayCard;
  readonly job: JobCard;
  readonly nowMs: number;
}) {
  const { finish, hold, lastTorque } = job;
  const who = answeredNow(card, nowMs);
  const offline = card.kiosk.offlineSince;
  return (
    <dl className="min-h-0 overflow-hidden text-[1.9rem] leading-[1.25]">
      <Fact name="Job">{job.procedure}</Fact>
      <Fact name="Step">{`${job.step.number} of ${job.step.of}, ${job.step.title}`}</Fact>
      {job.mechanic === undefined ? null : <Fact name="Mechanic">{job.mechanic}</Fact>}
      <Fact name="Time">
        {`${durationText(spentMs(job, nowMs))} of ${durationText(job.bookMs)} book`}
      </Fact>
      {finish === undefined ? null : (
        <Fact name="Done">
          {`about ${clockText(finish.typicalAt)}, 4 in 5 by ${clockText(finish.safeAt)}`}
        </Fact>
      )}
      {hold === undefined ? null : (
        <Fact name="Hold">
          {`${hold.reason.text}, since ${clockText(hold.since)} (${hold.by})`}
        </Fact>
      )}
      {who === undefined ? null : <Fact name="Call">{`answered by ${who}`}</Fact>}
      <Fact name="Loose">
        {job.ends.length === 0
          ? 'nothing'
          : job.ends.map(({ kind, count }) => endWords(kind, count)).join(', ')}
      </Fact>
      {lastTorque === undefined ? null : (
        <Fact name="Torque">
          {`${lastTorque.value} ${verdictWords[lastTorque.verdict]}, ${lastTorque.of}`}
        </Fact>
      )}
      {offline === undefined ? null : (
        <Fact name="Kiosk">{`offline since ${clockText(offline)}`}</Fact>
      )}
      {card.kiosk.cannotBeHeard === undefined ? null : (
        <Fact name="Kiosk">{`hears nobody: ${card.kiosk.cannotBeHeard}`}</Fact>
      )}
    </dl>
  );
}
