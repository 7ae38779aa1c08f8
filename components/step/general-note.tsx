import type { GeneralFigure } from '@/lib/fastening';
import { formatQuantity, fromCanonical, type TorqueUnit } from '@/lib/quantity';

/** Two figures: it is known no better. */
const rough = (torqueNm: number, unit: TorqueUnit): string => {
  const size = Math.floor(Math.log10(fromCanonical(torqueNm, unit)));
  return formatQuantity(torqueNm, unit, Math.max(0, 1 - size));
};

/** What is usual for such a fastener, never in the place or the size of a maker's value. */
export function GeneralNote({ figure }: { readonly figure: GeneralFigure }) {
  return (
    <section aria-label={figure.heading} className="rounded-block bg-sunk px-5 py-3">
      <h3 className="text-body font-bold">{figure.heading}</h3>
      <p className="text-glance">
        About {rough(figure.torqueNm, 'N.m')} · {rough(figure.torqueNm, '[lbf_av].[ft_i]')}
      </p>
      <p className="text-body font-bold">
        Steel in steel only: too much for plastic, light metal or thin sheet.
      </p>
      <ul className="list-disc pl-8 text-note text-quiet">
        {figure.assumptions.map((assumption) => (
          <li key={assumption}>{assumption}</li>
        ))}
      </ul>
    </section>
  );
}
