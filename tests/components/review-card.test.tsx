// @vitest-environment jsdom
import { AppRouterContext } from 'next/dist/shared/lib/app-router-context.shared-runtime';
import type { ComponentProps } from 'react';
import { describe, expect, test, vi } from 'vitest';
import { clockIn } from '@/components/review/clock';
import { DeviationCard, type DeviationCardProps } from '@/components/review/deviation-card';
import { runsOf } from '@/components/review/transcript';
import type { DeviationRow, SheetMark } from '@/lib/review';
import { fireEvent, press, render, screen } from './dom';

const row: DeviationRow = {
  id: 'a',
  kind: 'outOfSpec',
  job: '00000000-0000-4000-8000-000000000001',
  seq: 41,
  at: '2026-03-12T10:40:00Z',
  bay: { id: 'bay-2', name: 'Bay 2' },
  procedure: 'lid',
  revision: 2,
  title: 'Lid',
  step: 'tighten',
  stepNumber: 3,
  stepTitle: 'Tighten the lid',
  instruction: 'Tighten all bolts crosswise.',
  fastener: 'Lid bolt 4',
  measured: { value: 12.5, unit: 'N.m', lower: 9, upper: 11, verdict: 'outOfSpec' },
  tool: 'Wrench 2',
  by: { label: 'Mechanic 1', role: 'mechanic' },
  why: {
    transcript: {
      spoken: true,
      words: [
        { text: 'the', sure: true },
        { text: 'thread', sure: false },
        { text: 'galled', sure: false },
      ],
    },
    clip: '00000000-0000-4000-8000-000000000009',
  },
};

const refresh = vi.fn();

const show = (more: Partial<DeviationCardProps> = {}) => {
  const router = { refresh } as unknown as ComponentProps<
    typeof AppRouterContext.Provider
  >['value'];
  const { container } = render(
    <AppRouterContext.Provider value={router}>
      <DeviationCard row={row} clock={clockIn('Europe/Berlin')} foreman={false} {...more} />
    </AppRouterContext.Provider>,
  );
  return container;
};

const factsIn = (container: HTMLElement): Readonly<Record<string, string>> =>
  Object.fromEntries(
    [...container.querySelectorAll('dt')].map((name) => [
      name.textContent,
      name.nextElementSibling?.textContent ?? '',
    ]),
  );

describe('a deviation in the review', () => {
  test('is told with everything that one must know to learn from it', () => {
    const container = show();
    expect(screen.getByRole('heading').textContent).toBe('Out of spec');
    expect(factsIn(container)).toEqual({
      Sheet: 'Lid, revision 2',
      Step: '3. Tighten the lidTighten all bolts crosswise.',
      About: 'Lid bolt 4',
      Asked: '9–11 N·m',
      Measured: '12.5 N·m, out of spec',
      Tool: 'Wrench 2',
      By: 'Mechanic 1',
      Why: 'the thread galled (unsure) spokenThe sound was kept: a foreman who is signed on can play it.',
      Decision: 'Not decided yet. To the foreman’s screen',
    });
    expect(screen.getByRole('link', { name: '12 Mar, 11:40, Bay 2' }).getAttribute('href')).toBe(
      `/jobs/${row.job}?at=41`,
    );
  });

  test('underlines what was heard unsurely, and says so', () => {
    const container = show();
    expect([...container.querySelectorAll('u')].map(({ textContent }) => textContent)).toEqual([
      'thread galled',
    ]);
    expect(
      runsOf([{ text: 'a' }, { text: 'b', sure: true }, { text: 'c', sure: false }, { text: 'd' }]),
    ).toEqual([
      { text: 'a b', unsure: false },
      { text: 'c', unsure: true },
      { text: 'd', unsure: false },
    ]);
  });

  test('lets nobody but a foreman play its sound or mark the sheet', () => {
    const container = show();
    expect(container.querySelectorAll('audio').length).toBe(0);
    expect(screen.queryAllByRole('button').length).toBe(0);
    const foremans = show({ foreman: true });
    expect(foremans.querySelector('audio')?.getAttribute('src')).toBe(
      '/api/clips/00000000-0000-4000-8000-000000000009',
    );
    expect(screen.getAllByRole('button', { name: 'Change the sheet' }).length).toBe(1);
  });

  test('says what was decided, and that its sheet is marked', () => {
    const mark: SheetMark = {
      id: 'm',
      procedure: 'lid',
      revision: 2,
      title: 'Lid',
      note: 'Ask for grease',
      by: { label: 'Foreman 1', role: 'foreman' },
      at: '2026-03-13T08:00:00Z',
    };
    const decision = {
      word: 'acceptedRecheckDue',
      by: { label: 'Foreman 1', role: 'foreman' },
      why: { transcript: { spoken: false, words: [{ text: 'seen it' }] } },
    } as const;
    const facts = factsIn(show({ foreman: true, mark, row: { ...row, decision } }));
    expect(facts['Decision']).toBe('Accepted, re-check due by Foreman 1: seen it');
    expect(facts['Sheet marked']).toBe('Ask for grease Foreman 1, 13 Mar, 09:00');
    expect(screen.queryAllByRole('button').length).toBe(0);
  });

  test('marks the sheet with a note, once there is one', async () => {
    const sent = vi.fn((_path: string, _how: RequestInit) =>
      Promise.resolve(Response.json({ id: 'm' }, { status: 201 })),
    );
    vi.stubGlobal('fetch', sent);
    show({ foreman: true });
    press('Change the sheet');
    const mark = screen.getByRole<HTMLButtonElement>('button', { name: 'Mark the sheet' });
    expect(mark.disabled).toBe(true);
    fireEvent.change(screen.getByLabelText('What should the sheet say instead?'), {
      target: { value: ' Ask for grease ' },
    });
    press('Mark the sheet');
    expect((await screen.findByRole('status')).textContent).toBe(
      'Marked for the writer of the sheet.',
    );
    const [path, how] = sent.mock.calls[0] ?? [];
    expect(path).toBe('/api/review/marks');
    expect(JSON.parse(typeof how?.body === 'string' ? how.body : '')).toEqual({
      procedure: 'lid',
      revision: 2,
      step: 'tighten',
      note: 'Ask for grease',
      seen: { job: row.job, seq: 41 },
    });
    expect(refresh).toHaveBeenCalledOnce();
    vi.unstubAllGlobals();
  });

  test('says why the sheet was not marked, and keeps the note', async () => {
    vi.stubGlobal('fetch', () =>
      Promise.resolve(
        Response.json({ error: { code: 'signOn', message: 'Sign on first.' } }, { status: 401 }),
      ),
    );
    show({ foreman: true });
    press('Change the sheet');
    const field = screen.getByLabelText<HTMLTextAreaElement>('What should the sheet say instead?');
    fireEvent.change(field, { target: { value: 'Ask for grease' } });
    press('Mark the sheet');
    expect((await screen.findByRole('alert')).textContent).toBe('Sign on first.');
    expect(field.value).toBe('Ask for grease');
    vi.unstubAllGlobals();
  });
});
