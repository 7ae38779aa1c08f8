import type { HearingSection as Hearing } from '@/lib/review';
import { HearingsChart } from '../charts';
import { Section } from './section';

/** Which phrases fail, so that the shop can say them in another way. */
export function HearingSection({ hearing }: { readonly hearing: Hearing }) {
  return (
    <Section
      id="hearing"
      title="Hearing"
      empty={hearing.heard === 0 ? 'Nothing was heard in these days.' : undefined}
    >
      <HearingsChart
        heard={hearing.heard}
        bars={hearing.phrases.map((row) => ({ ...row, phrase: row.phrase || 'no phrase at all' }))}
      />
    </Section>
  );
}
