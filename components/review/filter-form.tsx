import Link from 'next/link';
import type { ReactNode } from 'react';
import { roles, roleWords } from './role-words';
import type { ReviewChoices, ReviewFilter } from '@/lib/review';
import { jointName } from './address';

const field =
  'min-h-[2.6rem] w-full rounded-small border-2 border-edge bg-surface px-2 text-note text-ink disabled:bg-sunk disabled:text-quiet';

function Field({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <label className="flex min-w-0 flex-col text-note">
      <span className="font-bold">{label}</span>
      {children}
    </label>
  );
}

interface Option {
  readonly value: string;
  readonly words: string;
}

function Choice({
  label,
  name,
  chosen,
  all,
  options,
  disabled = false,
}: {
  readonly label: string;
  readonly name: string;
  readonly chosen: string | undefined;
  readonly all: string;
  readonly options: readonly Option[];
  readonly disabled?: boolean;
}) {
  return (
    <Field label={label}>
      <select name={name} defaultValue={chosen ?? ''} disabled={disabled} className={field}>
        <option value="">{all}</option>
        {options.map(({ value, words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </Field>
  );
}

/** What the review looks at. It works without a script: sending it opens the page with another address. */
export function FilterForm({
  filter,
  choices,
}: {
  readonly filter: ReviewFilter;
  readonly choices: ReviewChoices;
}) {
  const sheet = choices.procedures.find(({ procedure }) => procedure === filter.procedure);
  const first = sheet === undefined ? 'Choose a procedure first' : undefined;
  return (
    // A new address must fill the fields anew.
    <form
      key={JSON.stringify(filter)}
      action="/review"
      method="get"
      aria-label="What to look at"
      className="grid grid-cols-2 items-end gap-x-4 gap-y-3 wide:grid-cols-5"
    >
      <Field label="From">
        <input type="date" name="from" defaultValue={filter.from} required className={field} />
      </Field>
      <Field label="To, with that day">
        <input type="date" name="to" defaultValue={filter.to} required className={field} />
      </Field>
      <Choice
        label="Shift"
        name="shift"
        chosen={filter.shift}
        all="All shifts"
        options={choices.shifts.map(({ id, name, from, to }) => ({
          value: id,
          words: `${name}, ${from}–${to}`,
        }))}
      />
      <Choice
        label="Bay"
        name="bay"
        chosen={filter.bay}
        all="All bays"
        options={choices.bays.map(({ id, name }) => ({ value: id, words: name }))}
      />
      <Choice
        label="Role"
        name="role"
        chosen={filter.role}
        all="All roles"
        options={roles.map((role) => ({ value: role, words: roleWords[role] }))}
      />
      <Choice
        label="Procedure"
        name="procedure"
        chosen={filter.procedure}
        all="All procedures"
        options={choices.procedures.map(({ procedure, title }) => ({
          value: procedure,
          words: title,
        }))}
      />
      <Choice
        label="Revision"
        name="revision"
        chosen={filter.revision === undefined ? undefined : String(filter.revision)}
        all={first ?? 'All revisions'}
        disabled={sheet === undefined}
        options={(sheet?.revisions ?? []).map((revision) => ({
          value: String(revision),
          words: `Revision ${revision}`,
        }))}
      />
      <Choice
        label="Step"
        name="step"
        chosen={filter.step}
        all={first ?? 'All steps'}
        disabled={sheet === undefined}
        options={(sheet?.steps ?? []).map(({ step, number, title }) => ({
          value: step,
          words: `${number}. ${title}`,
        }))}
      />
      <Choice
        label="Fastener or value"
        name="joint"
        chosen={
          filter.ask === undefined
            ? undefined
            : jointName({ ask: filter.ask, ...(filter.fastener && { fastener: filter.fastener }) })
        }
        all={first ?? 'All'}
        disabled={sheet === undefined}
        options={(sheet?.joints ?? []).map((joint) => ({
          value: jointName(joint),
          words: joint.name,
        }))}
      />
      <div className="col-span-2 flex items-center gap-4 wide:col-span-1">
        <button
          type="submit"
          className="min-h-[2.6rem] rounded-small border-2 border-act bg-act px-5 text-note font-bold text-act-ink"
        >
          Show
        </button>
        <Link href="/review" className="text-note underline">
          Show all
        </Link>
      </div>
    </form>
  );
}
