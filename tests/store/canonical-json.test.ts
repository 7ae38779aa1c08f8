import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonicalJson } from '@/lib/store';

test('members are sorted by UTF-16 code units: the example of RFC 8785 §3.2.3', () => {
  const value = {
    '\u20ac': 'Euro Sign',
    '\r': 'Carriage Return',
    '\ufb33': 'Hebrew Letter Dalet With Dagesh',
    '1': 'One',
    '\ud83d\ude00': 'Emoji: Grinning Face',
    '\u0080': 'Control',
    '\u00f6': 'Latin Small Letter O With Diaeresis',
  };
  // From memory of the RFC: the order of the values.
  const inOrder = [
    'Carriage Return',
    'One',
    'Control',
    'Latin Small Letter O With Diaeresis',
    'Euro Sign',
    'Emoji: Grinning Face',
    'Hebrew Letter Dalet With Dagesh',
  ];
  const text = canonicalJson(value);
  const places = inOrder.map((one) => text.indexOf(one));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places.every((place) => place > 0)).toBe(true);
});

test('numbers are written as ECMAScript writes them, without a sign on zero', () => {
  expect(canonicalJson([Number('333333333.33333329'), 1e30, 4.5, 2e-3, 1e-27, -0])).toBe(
    '[333333333.3333333,1e+30,4.5,0.002,1e-27,0]',
  );
});

test('the order in which members were written does not matter', () => {
  expect(canonicalJson({ b: 1, a: { d: [2, { y: 1, x: 2 }], c: 3 } })).toBe(
    canonicalJson({ a: { c: 3, d: [2, { x: 2, y: 1 }] }, b: 1 }),
  );
});

test('what is undefined is left out, what is no JSON is refused', () => {
  expect(canonicalJson({ a: undefined, b: null })).toBe('{"b":null}');
  expect(() => canonicalJson({ a: Number.NaN })).toThrow('number is no JSON value');
  expect(() => canonicalJson([() => 1])).toThrow('function is no JSON value');
});

test('every JSON value reads back as itself', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }),
  );
});
