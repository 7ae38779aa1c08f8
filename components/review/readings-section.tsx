import { unitFacts } from '@/lib/quantity';
import type { CapabilityAnswer, Joint, JointSection, ReviewFilter } from '@/lib/review';
import type { Estimate } from '@/lib/statistics';
import { IndividualsChart } from '../charts';
import { jointName, reviewAddress, timelineAddress } from './address';
import type { Clock } from './clock';
import { Section } from './section';

const estimate = ({ value, from, to }: Estimate): string =>
  `${value.toFixed(2)} (95 %: ${from.toFixed(2)} to ${to.toFixed(2)})`;

/** Whether the joint can keep its limits, or why nothing is said of that. */
const capabilityText = (answer: CapabilityAnswer): string => {
  switch (answer.kind) {
    case 'capable': {
      const { cp, cpk } = answer.capability;
      return `Capability from ${answer.points} values: ${cp === undefined ? '' : `Cp ${estimate(cp)}, `}Cpk ${estimate(cpk)}.`;
    }
    case 'tooFew':
      return `No capability: it needs ${answer.needs} values, there are ${answer.points}.`;
    case 'unstable':
      return `No capability: ${answer.signals} ${answer.signals === 1 ? 'point breaks' : 'points break'} a rule, and what is not stable has none.`;
    case 'noLimits':
      return 'No capability: the sheet gives no figure.';
    case 'limitsDiffer':
      return 'No capability: the figure was not the same for all values.';
    case 'noSpread':
      return 'No capability: all values are the same.';
  }
};

export interface ReadingsProps {
  readonly section: JointSection | undefined;
  readonly shown: Joint | undefined;
  readonly joints: readonly Joint[];
  readonly procedures: readonly { readonly procedure: string; readonly title: string }[];
  readonly filter: ReviewFilter;
  readonly clock: Clock;
}

/** The values of one joint in the order of time, and the way to those of the others. */
export function ReadingsSection(props: ReadingsProps) {
  const { section, shown, joints, procedures, filter, clock } = props;
  if (shown === undefined)
    return <Section id="readings" title="Readings" empty="No sheet asks for a value." />;
  const sheet = procedures.find(({ procedure }) => procedure === shown.procedure);
  const others = procedures.filter(({ procedure }) => procedure !== shown.procedure);
  return (
    <Section id="readings" title="Readings">
      <p className="text-note">
        Sheet: {sheet?.title}.{' '}
        {filter.procedure !== undefined || others.length === 0 ? null : (
          <>
            Others:{' '}
            {others.map(({ procedure, title }) => (
              <a
                key={procedure}
                href={reviewAddress(filter, 'readings', { sheet: procedure })}
                className="mr-4 underline"
              >
                {title}
              </a>
            ))}
          </>
        )}
      </p>
      {section === undefined || section.points.length === 0 ? (
        <p className="text-body">{shown.name}: no values in these days.</p>
      ) : (
        <>
          <IndividualsChart
            title={shown.name}
            unit={unitFacts[section.unit].symbol}
            points={section.points.map((point) => ({
              key: `${point.job}/${point.seq}`,
              value: point.value,
              movingRange: point.movingRange,
              verdict: point.verdict,
              rules: point.rules,
              day: clock.day(point.at),
              when: clock.when(point.at),
              tool: point.tool,
              href: timelineAddress(point),
            }))}
            limits={section.chart}
            spec={section.limits}
          />
          <p className="text-note">{capabilityText(section.capability)}</p>
        </>
      )}
      {filter.ask !== undefined ? null : (
        <nav aria-label="Fasteners and values" className="flex flex-wrap gap-2 text-note">
          {joints.map((joint) => {
            const name = jointName(joint);
            const now = name === jointName(shown);
            return (
              <a
                key={name}
                href={reviewAddress(filter, 'readings', { sheet: joint.procedure, chart: name })}
                aria-current={now ? 'true' : undefined}
                className={`inline-flex min-h-[2.2rem] items-center rounded-small border-2 px-3 ${now ? 'border-ink bg-sunk font-bold' : 'border-line bg-surface'}`}
              >
                {joint.name}
              </a>
            );
          })}
        </nav>
      )}
    </Section>
  );
}
