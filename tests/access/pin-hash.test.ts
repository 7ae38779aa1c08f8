import { expect, test } from 'vitest';
import { hashPin, pinSchema, verifyPin } from '@/lib/access';

test('the PIN that was hashed is verified, another is not', async () => {
  const hash = await hashPin('4071');
  expect(await verifyPin('4071', hash)).toBe(true);
  expect(await verifyPin('4072', hash)).toBe(false);
});

test('the hash names its cost, and the same PIN hashes differently each time', async () => {
  const cheap = { logN: 5, r: 8, p: 1 };
  const one = await hashPin('4071', cheap);
  expect(one).toMatch(/^\$scrypt\$ln=5,r=8,p=1\$[A-Za-z0-9+/]{22}==\$[A-Za-z0-9+/]{43}=$/);
  expect(await hashPin('4071', cheap)).not.toBe(one);
  expect(await verifyPin('4071', one)).toBe(true);
});

test('scrypt is the one of RFC 7914: test vector 2 of §12', async () => {
  const salt = Buffer.from('NaCl').toString('base64');
  // From memory of the RFC: scrypt("password", "NaCl", N=1024, r=8, p=16), the first 32 of 64 bytes.
  const key = Buffer.from(
    'fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162',
    'hex',
  ).toString('base64');
  expect(await verifyPin('password', `$scrypt$ln=10,r=8,p=16$${salt}$${key}`)).toBe(true);
});

test('a broken stored hash is an error, not a wrong PIN', async () => {
  await expect(verifyPin('4071', '$scrypt$broken')).rejects.toThrow('a stored PIN hash is broken');
});

test.each(['4071', '00000000'])('%s is a PIN', (pin) => {
  expect(pinSchema.safeParse(pin).success).toBe(true);
});

test.each(['407', '123456789', 'abcd', ' 4071', '٤٠٧١', ''])('%j is no PIN', (pin) => {
  expect(pinSchema.safeParse(pin).success).toBe(false);
});
