// @vitest-environment jsdom
import { describe, expect, test, vi } from 'vitest';
import { QuestionPanel } from '@/components/kiosk/question-panel';
import type { Question } from '@/lib/kiosk';
import { fireEvent, isDisabled, press, render, screen } from './dom';

const draft = {
  step: 'tighten',
  ask: 'torque',
  fastener: 'cover-3',
  label: 'Cover bolt 3',
  value: 26,
  unit: 'N.m',
  interval: { lower: 20.9, upper: 23.1, target: 22 },
  verdict: 'outOfSpec',
  sentence: '26 N·m is above 23.1 N·m, out of spec by 2.9 N·m.',
  replaces: [],
} as const;

const asks = (question: Question, dictate?: () => void, dictating = false, soundDays = 30) => {
  const on = { yes: vi.fn(), no: vi.fn(), reason: vi.fn<(text: string) => void>() };
  render(
    <QuestionPanel
      question={question}
      dictating={dictating}
      soundDays={soundDays}
      onYes={on.yes}
      onNo={on.no}
      onReason={on.reason}
      onDictate={dictate}
    />,
  );
  return on;
};

describe('a value asked back', () => {
  const question: Question = {
    kind: 'value',
    draft,
    oddities: [
      { kind: 'unsure', why: 'too much noise' },
      { kind: 'outOfSpec' },
      { kind: 'outOfOrder', next: 'Cover bolt 1' },
      { kind: 'contradicts', earlier: '22 N·m' },
    ],
  };

  test('is named, shown with its verdict, and every reason for asking is given', () => {
    asks(question);
    expect(screen.getByRole('region', { name: 'Cover bolt 3: is this right?' })).toBeTruthy();
    expect(screen.getByText('26 N·m')).toBeTruthy();
    expect(screen.getByText('out of spec')).toBeTruthy();
    expect(screen.getByText(draft.sentence)).toBeTruthy();
    expect(screen.getAllByRole('listitem').map((item) => item.textContent)).toEqual([
      'Not heard well: too much noise',
      'Outside what is accepted: 20.9–23.1 N·m',
      'Cover bolt 1 comes first in the order',
      '22 N·m was given before',
    ]);
  });

  test('is taken only by yes', () => {
    const on = asks(question);
    press(/No/);
    expect(on.no).toHaveBeenCalledOnce();
    expect(on.yes).not.toHaveBeenCalled();
    press(/Yes, take it/);
    expect(on.yes).toHaveBeenCalledOnce();
  });
});

describe('a number that could be two', () => {
  test('is said again, and cannot be taken by yes', () => {
    asks({ kind: 'whichValue', candidates: [15, 50] });
    expect(screen.getByRole('region', { name: 'Which one was it?' }).textContent).toContain(
      '15or50Say it again, digit by digit',
    );
    expect(screen.queryByRole('button', { name: /Yes/ })).toBeNull();
  });
});

describe('an act that is hard to undo', () => {
  test('is asked with yes and no', () => {
    const on = asks({
      kind: 'confirm',
      text: 'Close the job?',
      act: { kind: 'happen', happenings: [{ type: 'jobClosed' }], done: 'Job closed' },
    });
    expect(screen.getByRole('heading').textContent).toBe('Close the job?');
    press(/Yes/);
    expect(on.yes).toHaveBeenCalledOnce();
  });
});

describe('a reason', () => {
  const question: Question = {
    kind: 'reason',
    text: 'Why is it on hold?',
    reasonFor: { kind: 'hold' },
  };

  test('is one of the usual ones by a touch', () => {
    const on = asks(question);
    press('Waiting for a tool');
    expect(on.reason).toHaveBeenCalledWith('Waiting for a tool');
  });

  test('is typed, and never empty', () => {
    const on = asks(question);
    expect(isDisabled('Keep this reason')).toBe(true);
    fireEvent.change(screen.getByLabelText('In your own words'), { target: { value: '  ' } });
    expect(isDisabled('Keep this reason')).toBe(true);
    fireEvent.change(screen.getByLabelText('In your own words'), {
      target: { value: ' lunch ' },
    });
    press('Keep this reason');
    expect(on.reason).toHaveBeenCalledWith('lunch');
  });

  test.each([
    [30, 'Listening: say why. It is recorded: the sound is kept with it for 30 days.'],
    [1, 'Listening: say why. It is recorded: the sound is kept with it for a day.'],
    [0, 'Listening: say why. Only the words are kept.'],
  ])('is recorded while it is spoken, for %i days, and whoever speaks is told', (days, text) => {
    asks(question, vi.fn(), true, days);
    expect(screen.getByRole('status').textContent).toBe(text);
  });

  test('is spoken where the kiosk can hear', () => {
    const dictate = vi.fn();
    asks(question, dictate);
    press('Say it');
    expect(dictate).toHaveBeenCalledOnce();
  });

  test('may be left', () => {
    const on = asks(question);
    press(/Leave it/);
    expect(on.no).toHaveBeenCalledOnce();
  });
});
