import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvRecord, guarded, unguarded, utcInstant } from '@/lib/export';

describe('a CSV record (RFC 4180)', () => {
  test('is ended by CR LF, with commas between', () => {
    expect(csvRecord(['a', 1.5, undefined, 'b'])).toBe('a,1.5,,b\r\n');
  });

  // RFC 4180, section 2, rules 6 and 7
  test('puts in quotes what has a comma, a quote or a line break in it, and doubles quotes', () => {
    expect(csvRecord(['b CRLF\r\nbb', 'c,c', 'd"d'])).toBe('"b CRLF\r\nbb","c,c","d""d"\r\n');
  });

  test('writes negative numbers as they are, and no cell for what is no number', () => {
    expect(csvRecord([-3.5, Number.NaN])).toBe('-3.5,\r\n');
  });

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '\nx', '＝1', "'x"])(
    'puts an apostrophe before the text %j, which a spreadsheet would work out',
    (text) => {
      expect(guarded(text)).toBe(`'${text}`);
    },
  );

  test('whatever the texts, another parser reads back what was written', () => {
    const text = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.string({ unit: fc.constantFrom('"', ',', '\r', '\n', '=', "'", '-', 'a', ' ') }),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(text, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 5 }),
        (records) => {
          const csv = records.map(csvRecord).join('');
          const read: string[][] = parse(csv, {
            record_delimiter: '\r\n',
            skip_empty_lines: false,
          });
          expect(read.map((record) => record.map(unguarded))).toEqual(records);
          for (const cell of read.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r\n]/);
        },
      ),
    );
  });
});

test('an instant is written in UTC with its offset', () => {
  expect(utcInstant('2026-03-02T10:30:00+01:00')).toBe('2026-03-02T09:30:00.000+00:00');
});
