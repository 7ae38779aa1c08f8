import { describe, expect, it } from 'vitest';
import {
  Turn,
  type Moment,
  type Piece,
  type Quiet,
  type Spoken,
} from '@/components/microphone/turn';
import { everyPhrase, understand, type Heard } from '@/lib/voice';

const heard = (text: string): Heard => ({
  text,
  words: text.split(' ').map((word, i) => ({ text: word, confidence: 1, startS: i, endS: i + 1 })),
});
const moment = (atS: number): Moment => ({ atS, arrivedMs: 0 });
const piece = (text: string, atS: number): Piece => ({
  readings: [heard(text)],
  ended: moment(atS),
});
const still: Quiet = { speaking: false, stillS: 1 };
const pausing: Quiet = { speaking: false, stillS: 0.6 };
const speaking: Quiet = { speaking: true, stillS: 0 };
const newTurn = (): Turn =>
  new Turn(([main]) => understand(main ?? { text: '', words: [] }, everyPhrase));

const meant = (spoken: readonly Spoken[]): unknown[] =>
  spoken.map(({ understanding }) =>
    understanding.kind === 'intent'
      ? understanding.intent.kind === 'value'
        ? understanding.intent.value
        : understanding.intent.kind
      : 'nothing',
  );

describe('a turn', () => {
  it('lets a phrase that is no number act at once', () => {
    expect(meant(newTurn().hear(piece('next', 1)))).toEqual(['next']);
  });

  it('keeps a number until it has been quiet, and shows it meanwhile', () => {
    const turn = newTurn();
    expect(turn.hear(piece('torqued one twenty', 1))).toEqual([]);
    expect(meant(turn.preview === undefined ? [] : [turn.preview])).toEqual([120]);
    expect(turn.tick(moment(1.4), pausing)).toEqual([]);
    expect(meant(turn.tick(moment(1.9), still))).toEqual([120]);
    expect(turn.tick(moment(2), still)).toEqual([]);
  });

  it('takes a number whose unit has been said at once: nothing can follow', () => {
    expect(meant(newTurn().hear(piece('one twenty newton meters', 1)))).toEqual([120]);
  });

  it('is unsure of a number that begins soon after something unclear: it may be the rest of it', () => {
    const at = (text: string, startS: number): Piece => ({
      readings: [{ text, words: [{ text, confidence: 1, startS, endS: startS + 0.3 }] }],
      ended: moment(startS + 0.6),
    });
    const certaintyAfter = (startS: number): unknown => {
      const turn = newTurn();
      turn.hear(at('[unk]', 1));
      turn.tick(moment(2.5), still);
      turn.hear(at('five', startS));
      return turn
        .tick(moment(startS + 1.5), still)
        .map(({ understanding }) => understanding.kind === 'intent' && understanding.certainty);
    };
    expect(certaintyAfter(2.6)).toEqual(['unsure']);
    expect(certaintyAfter(3.4)).toEqual(['sure']);
  });

  it('never takes a part of a number for the whole: "one", "three three" is 133', () => {
    const turn = newTurn();
    expect(turn.hear(piece('one', 1))).toEqual([]);
    expect(turn.tick(moment(2), speaking)).toEqual([]);
    expect(turn.hear(piece('three three', 2.4))).toEqual([]);
    expect(meant(turn.tick(moment(3.3), still))).toEqual([133]);
  });

  it('joins the unit to the number before it', () => {
    const turn = newTurn();
    turn.hear(piece('eighty eight', 1));
    expect(meant(turn.hear(piece('foot pounds', 2)))).toEqual([88]);
  });

  it('joins the name of a fastener to the value after it', () => {
    const turn = newTurn();
    expect(turn.hear(piece('bolt three', 1))).toEqual([]);
    turn.hear(piece('torqued ten', 1.5));
    const [spoken] = turn.tick(moment(3), still);
    expect(spoken?.understanding).toMatchObject({ intent: { value: 10, label: '3' } });
  });

  it('settles a number when another phrase follows it', () => {
    const turn = newTurn();
    turn.hear(piece('one twenty', 1));
    expect(meant(turn.hear(piece('next', 1.4)))).toEqual([120, 'next']);
  });

  it('does not act on a number that talk goes on from', () => {
    const turn = newTurn();
    turn.hear(piece('one [unk] three', 1));
    turn.hear(piece('[unk] seven [unk] five', 1.5));
    expect(meant(turn.tick(moment(3), still))).toEqual(['nothing']);
  });

  it('does not wait for ever where it is never still', () => {
    const turn = newTurn();
    turn.hear(piece('one twenty', 1));
    const noisy: Quiet = { speaking: false, stillS: 0.1 };
    expect(turn.tick(moment(3), noisy)).toEqual([]);
    expect(meant(turn.tick(moment(3.6), noisy))).toEqual([120]);
  });

  it('waits with a number for as long as somebody speaks', () => {
    const turn = newTurn();
    turn.hear(piece('one hundred', 1));
    expect(turn.tick(moment(5), speaking)).toEqual([]);
    turn.hear(piece('and twenty', 5.5));
    expect(meant(turn.settle(moment(6)))).toEqual([120]);
  });

  it('forgets what waits when it is told to', () => {
    const turn = newTurn();
    turn.hear(piece('one hundred', 1));
    expect(turn.drop()?.readings[0]?.text).toBe('one hundred');
    expect(turn.settle(moment(9))).toEqual([]);
  });

  it('joins each recogniser’s readings by themselves', () => {
    const both: (readonly Heard[])[] = [];
    const turn = new Turn((readings) => {
      both.push(readings);
      return { kind: 'nothing', why: 'test', said: '' };
    });
    turn.hear({ readings: [heard('one'), heard('wun')], ended: moment(1) });
    turn.hear({ readings: [heard('two'), heard('too')], ended: moment(2) });
    turn.settle(moment(3));
    expect(both.at(-1)?.map(({ text }) => text)).toEqual(['one two', 'wun too']);
  });
});
