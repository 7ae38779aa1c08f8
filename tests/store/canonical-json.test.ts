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

// RFC 8785, section 3.2.2 and 3.2.3, from memory of the RFC.
test('the example of RFC 8785 §3.2.2 gives the text of §3.2.3', () => {
  const input = String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`;
  expect(canonicalJson(JSON.parse(input))).toBe(
    String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
  );
});

const double = (bits: string): number => Buffer.from(bits, 'hex').readDoubleBE();

// RFC 8785, appendix B, from memory of the RFC.
test.each([
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['c340000000000000', '-9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'],
  ['41b3de4355555554', '333333333.33333325'],
  ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'],
  ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
])('the double %s is written %s', (bits, text) => {
  expect(canonicalJson(double(bits))).toBe(text);
});

test.each(['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000'])(
  'the double %s is no JSON number',
  (bits) => {
    expect(() => canonicalJson(double(bits))).toThrow('number is no JSON value');
  },
);

test('half a surrogate pair is refused, in a value and in a name (RFC 8785 §3.2.2.2)', () => {
  expect(() => canonicalJson({ a: 'x\ud800' })).toThrow('half a surrogate pair is no JSON value');
  expect(() => canonicalJson({ '\ude00': 1 })).toThrow('half a surrogate pair is no JSON value');
  expect(canonicalJson('\ud83d\ude00')).toBe('"😀"');
});

test('control characters are written as JSON writes them, the rest of Unicode as it is', () => {
  expect(canonicalJson('\b\t\n\f\r\u0000\u001f\u007f\u0085\u2028"\\/')).toBe(
    String.raw`"\b\t\n\f\r\u0000\u001f` + '\u007f\u0085\u2028' + String.raw`\"\\/"`,
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
