import { kindNames, kinds, type Filter } from '@/lib/timeline';

/** What is listed; sent as an address, so that it works without scripts and can be kept. */
export function FilterForm({
  job,
  filter,
  at,
  steps,
}: {
  readonly job: string;
  readonly filter: Filter;
  readonly at: number;
  readonly steps: readonly { readonly id: string; readonly title: string }[];
}) {
  return (
    <form action={`/jobs/${job}`} className="flex flex-wrap items-end gap-x-6 gap-y-2">
      <input type="hidden" name="at" value={at} />
      <fieldset className="min-w-0">
        <legend className="font-bold">Only these</legend>
        <div className="flex flex-wrap gap-x-5">
          {kinds.map((kind) => (
            <label key={kind} className="flex min-h-[44px] items-center gap-2">
              <input
                type="checkbox"
                name="kind"
                value={kind}
                defaultChecked={filter.kinds.includes(kind)}
                className="size-[1.1em] accent-act"
              />
              {kindNames[kind]}
            </label>
          ))}
        </div>
      </fieldset>
      <label className="flex min-w-0 flex-col gap-1">
        <span className="font-bold">At step</span>
        <select
          name="step"
          defaultValue={filter.step ?? ''}
          className="min-h-[44px] max-w-full min-w-0 rounded-small border-2 border-edge bg-surface px-3"
        >
          <option value="">Any</option>
          {steps.map(({ id, title }, index) => (
            <option key={id} value={id}>
              {index + 1} {title}
            </option>
          ))}
        </select>
      </label>
      <button
        type="submit"
        className="min-h-[44px] rounded-block border-2 border-edge bg-surface px-5 font-bold"
      >
        List these
      </button>
      {filter.kinds.length === 0 && filter.step === undefined ? null : (
        <a href={`/jobs/${job}?at=${at}`} className="flex min-h-[44px] items-center underline">
          List all
        </a>
      )}
    </form>
  );
}
