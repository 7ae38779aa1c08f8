import { describe, expect, it } from 'vitest';
import { asksBack, phoneDistance as distance, phonesOf, phraseTable, rowKind } from '@/lib/voice';

const said = phraseTable.flatMap((row) =>
  row.say
    .filter((say) => !say.includes('{value}'))
    .map((say) => ({ say, row, phones: phonesOf(say) ?? ['?'] })),
);

describe('phrases sound different', () => {
  it('each word has a pronunciation', () => {
    expect(said.filter(({ phones }) => phones.includes('?'))).toEqual([]);
  });

  it('the distance is counted in phones', () => {
    expect(distance(['N', 'OW'], ['Y', 'EH', 'S'])).toBe(3);
    expect(distance(['K', 'AE', 'T'], ['K', 'AE', 'T', 'S'])).toBe(1);
  });

  it('by two phones at least from every phrase of another meaning', () => {
    const near = said.flatMap((one, at) =>
      said
        .slice(at + 1)
        .filter((other) => other.row !== one.row && distance(one.phones, other.phones) < 2)
        .map((other) => [one.say, other.say]),
    );
    expect(near).toEqual([]);
  });

  it('by four phones at least from every harmless one, where they are hard to undo', () => {
    const near = said
      .filter(({ row }) => asksBack(rowKind(row)))
      .flatMap((one) =>
        said
          .filter(
            (other) => !asksBack(rowKind(other.row)) && distance(one.phones, other.phones) < 4,
          )
          .map((other) => [one.say, other.say]),
      );
    expect(near).toEqual([]);
  });
});
