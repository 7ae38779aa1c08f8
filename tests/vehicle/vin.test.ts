import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDigit, modelYear, parseSerial, parseVin, type Vin } from '@/lib/vehicle';

const vinOf = (text: string): Vin => {
  const result = parseVin(text);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const problem = (text: string) => {
  const result = parseVin(text);
  return result.ok ? result.value : result.error;
};

const digits = Array.from('0123456789');
const characters = [...Array.from('ABCDEFGHJKLMNPRSTUVWXYZ'), ...digits];
const seventeen = fc.array(fc.constantFrom(...characters), { minLength: 17, maxLength: 17 });
/** A North American VIN, its check digit put right. */
const rightVin = seventeen.map((drawn) => {
  const raw = `1${drawn.slice(1).join('')}`;
  const digit = checkDigit(raw);
  return `${raw.slice(0, 8)}${digit.ok ? digit.value : ''}${raw.slice(9)}`;
});

describe('a VIN', () => {
  it('has three sections, and a check digit in North America', () => {
    expect(vinOf('11111111111111111')).toEqual({
      text: '11111111111111111',
      maker: '111',
      descriptor: '111111',
      indicator: '11111111',
      checkDigitRequired: true,
      checkDigitFits: true,
    });
    expect(vinOf('zz9-aa1115 00x00001').text).toBe('ZZ9AA111500X00001');
  });

  it('needs no check digit elsewhere', () => {
    expect(vinOf('ZZ9AA111500X00001')).toMatchObject({
      checkDigitRequired: false,
      checkDigitFits: false,
    });
  });

  it('says what is wrong', () => {
    expect(problem('1111')).toEqual({ kind: 'length', message: 'A VIN has 17 characters, not 4.' });
    expect(problem('1111111111111111O')).toEqual({
      kind: 'letter',
      message: '“O” in place 17 (is it 0?) is in no VIN. Read it again.',
    });
    expect(problem('1I111Q11111111Ä11')).toMatchObject({
      message:
        '“I” in place 2 (is it 1?), “Q” in place 6 (is it 0?) and “Ä” in place 15 are in no VIN. Read them again.',
    });
    expect(problem('11111111111111112')).toEqual({
      kind: 'checkDigit',
      message:
        'The check digit says 3, the plate says 1 in place 9: one of the 17 is misread. Read it again.',
    });
  });

  it('has another check digit when the last two figures change places', () => {
    const right = checkDigit('11111111011111112');
    const swapped = checkDigit('11111111011111121');
    expect(right).not.toEqual(swapped);
  });

  it('is found wrong when one character is misread as one of another value', () => {
    fc.assert(
      fc.property(
        rightVin,
        fc.integer({ min: 1, max: 16 }),
        fc.constantFrom(...digits),
        (vin, place, digit) => {
          fc.pre(place !== 8 && /\d/.test(vin.charAt(place)) && vin.charAt(place) !== digit);
          expect(parseVin(vin).ok).toBe(true);
          expect(parseVin(vin.slice(0, place) + digit + vin.slice(place + 1)).ok).toBe(false);
        },
      ),
    );
  });

  it('is read or refused, never thrown at, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          seventeen.map((c) => c.join('')),
        ),
        (text) => {
          for (const result of [parseSerial(text), parseVin(text)]) {
            if (!result.ok) expect(result.error.message).not.toBe('');
          }
        },
      ),
    );
  });
});

describe('the model year', () => {
  const year = (seventh: string, tenth: string, weight?: 'light' | 'heavy') => {
    const raw = `1AA11A${seventh}A0${tenth}A000001`;
    const digit = checkDigit(raw);
    return modelYear(
      vinOf(`${raw.slice(0, 8)}${digit.ok ? digit.value : ''}${raw.slice(9)}`),
      weight,
    );
  };

  it.each([
    ['1', 'A', 1980],
    ['1', 'Y', 2000],
    ['1', '1', 2001],
    ['1', '9', 2009],
    ['A', 'A', 2010],
    ['A', 'J', 2018],
    ['A', 'Y', 2030],
    ['A', '9', 2039],
  ])('with %s in the seventh and %s in the tenth place is %d', (seventh, tenth, expected) => {
    expect(year(seventh, tenth)).toEqual({ kind: 'one', year: expected });
  });

  it('stays open on heavy vehicles and outside North America', () => {
    expect(year('1', 'K', 'heavy')).toEqual({ kind: 'either', years: [1989, 2019] });
    expect(modelYear(vinOf('ZZ9AA1115K0X00001'))).toEqual({ kind: 'either', years: [1989, 2019] });
  });

  it('is unknown where the tenth character stands for none', () => {
    expect(year('1', 'U')).toEqual({ kind: 'unknown' });
    expect(year('1', 'Z')).toEqual({ kind: 'unknown' });
    expect(year('1', '0')).toEqual({ kind: 'unknown' });
  });
});

describe('another serial', () => {
  it('is accepted as it is', () => {
    expect(parseSerial(' AB 123/77 ')).toEqual({
      ok: true,
      value: { kind: 'other', text: 'AB 123/77' },
    });
    expect(parseSerial('1111111111111111')).toMatchObject({ value: { kind: 'other' } });
  });

  it('of seventeen characters must be a right VIN', () => {
    expect(parseSerial('11111111111111111')).toMatchObject({ value: { kind: 'vin' } });
    expect(parseSerial('11111111111111112')).toMatchObject({ error: { kind: 'checkDigit' } });
    expect(parseSerial('1111111111111111I')).toMatchObject({ error: { kind: 'letter' } });
  });

  it('of seventeen characters may be without a check digit once it was read twice', () => {
    expect(parseSerial('1111 1111111111112', true)).toEqual({
      ok: true,
      value: { kind: 'other', text: '11111111111111112' },
    });
    expect(parseSerial('11111111111111111', true)).toMatchObject({ value: { kind: 'vin' } });
    expect(parseSerial('1111111111111111I', true)).toMatchObject({ error: { kind: 'letter' } });
  });

  it('is refused empty, too long, or with signs that are on no plate', () => {
    expect(parseSerial('  ')).toMatchObject({ error: { kind: 'empty' } });
    expect(parseSerial('1'.repeat(41))).toMatchObject({ error: { kind: 'tooLong' } });
    expect(parseSerial('=1+1')).toMatchObject({ error: { kind: 'character' } });
  });
});
