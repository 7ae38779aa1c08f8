import type { Reading, JobEvent, JobState } from '../job';
import { fastenerName, fastenerOf, stepNumber, stepOf } from '../procedure';
import { canonicalUnit, quantityOf } from '../quantity';
import type { Cell } from './csv';
import { utcInstant } from './instant';

/** The kinds of rows that can be taken out of the shop. */
export const exportKinds = ['readings', 'deviations', 'events'] as const;
export type ExportKind = (typeof exportKinds)[number];

/** One row, by column. */
export type Row = Readonly<Record<string, Cell>>;

/** Columns in the order in which they are written. Units are UCUM codes, times UTC with offset. */
export const columns: Readonly<Record<ExportKind, readonly string[]>> = {
  readings: [
    'job',
    'seq',
    'at',
    'bay',
    'plate',
    'procedure',
    'revision',
    'step',
    'step_title',
    'ask',
    'fastener',
    'fastener_name',
    'value',
    'unit',
    'canonical_value',
    'canonical_unit',
    'verdict',
    'status',
    'tool',
    'expanded_uncertainty',
    'actor',
    'input',
    'said',
    'confidence',
    'asked_back',
  ],
  deviations: [
    'job',
    'seq',
    'at',
    'bay',
    'plate',
    'procedure',
    'revision',
    'kind',
    'step',
    'step_number',
    'step_title',
    'part',
    'fastener',
    'reading',
    'reason',
    'clip',
    'actor',
    'decision',
    'decided_by',
    'decision_reason',
  ],
  events: ['job', 'seq', 'id', 'at', 'actor', 'role', 'device', 'input', 'type', 'happening'],
};

const common = (state: JobState): Row => ({
  job: state.job,
  bay: state.bay,
  plate: state.vehicle.plate,
  procedure: state.revision.procedure,
  revision: state.revision.revision,
});

const readingRow = (state: JobState, reading: Reading): Row => {
  const found =
    reading.fastener === undefined ? undefined : fastenerOf(state.revision, reading.fastener);
  const { input } = reading;
  const heard = input.by === 'voice' ? input : undefined;
  return {
    ...common(state),
    seq: reading.seq,
    at: utcInstant(reading.at),
    step: reading.step,
    step_title: stepOf(state.revision, reading.step)?.title,
    ask: reading.ask,
    fastener: reading.fastener,
    fastener_name: found === undefined ? undefined : fastenerName(found.group, found.fastener),
    value: reading.value,
    unit: reading.unit,
    canonical_value: reading.canonical,
    canonical_unit: canonicalUnit[quantityOf(reading.unit)],
    verdict: reading.verdict,
    status: reading.status,
    tool: reading.tool?.id,
    expanded_uncertainty: reading.tool?.expandedUncertainty,
    actor: reading.actor,
    input: input.by,
    said: heard?.said,
    confidence: heard?.confidence,
    asked_back: heard === undefined ? undefined : String(heard.askedBack),
  };
};

const deviationRow = (state: JobState, deviation: JobState['deviations'][number]): Row => ({
  ...common(state),
  seq: deviation.seq,
  at: utcInstant(deviation.at),
  kind: deviation.kind,
  step: deviation.step,
  step_number: stepNumber(state.revision, deviation.step),
  step_title: stepOf(state.revision, deviation.step)?.title,
  part: deviation.part,
  fastener: deviation.fastener,
  reading: deviation.reading,
  reason: deviation.reason?.text,
  clip: deviation.reason?.clip,
  actor: deviation.by,
  decision: deviation.decision?.word,
  decided_by: deviation.decision?.by,
  decision_reason: deviation.decision?.reason.text,
});

const eventRow = (event: JobEvent): Row => ({
  job: event.job,
  seq: event.seq,
  id: event.id,
  at: utcInstant(event.at),
  actor: event.actor,
  role: event.role,
  device: event.device,
  input: JSON.stringify(event.input),
  type: event.happening.type,
  happening: JSON.stringify(event.happening),
});

/** The rows of one job. */
export const rowsOf = (
  kind: ExportKind,
  state: JobState,
  events: readonly JobEvent[],
): readonly Row[] => {
  switch (kind) {
    case 'readings':
      return state.readings.map((reading) => readingRow(state, reading));
    case 'deviations':
      return state.deviations.map((deviation) => deviationRow(state, deviation));
    case 'events':
      return events.map(eventRow);
  }
};
