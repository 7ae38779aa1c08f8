import type { KioskState } from '@/lib/kiosk';

/**
 * What the screen asks for, by name. Words begun while it named one thing are never taken for another: not for the
 * next step, nor for a question that came up meanwhile.
 */
export const placeOf = ({ job, question, chosen, adapter, view }: KioskState): string =>
  [
    job.job,
    job.phase,
    job.currentStep,
    chosen ?? '',
    adapter === undefined ? '' : JSON.stringify(adapter),
    view === 'adapter' ? view : '',
    question === undefined ? '' : JSON.stringify(question),
  ].join(' ');
