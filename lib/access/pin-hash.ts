import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { z } from 'zod';

/** Four to eight digits. Guessing is stopped by the throttle; the hash protects a stolen database only so far. */
export const pinSchema = z.string().regex(/^\d{4,8}$/);

/** Cost of scrypt (RFC 7914): 128·N·r bytes of memory, p times over. */
export interface HashCost {
  readonly logN: number;
  readonly r: number;
  readonly p: number;
}

/** 32 MiB, three times over: one of the equal choices of the OWASP password storage cheat sheet (from memory). */
export const hashCost: HashCost = { logN: 15, r: 8, p: 3 };

const keyBytes = 32;
const saltBytes = 16;

const derive = (pin: string, salt: Buffer, { logN, r, p }: HashCost): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    const N = 2 ** logN;
    const maxmem = 256 * N * r;
    scrypt(pin, salt, keyBytes, { N, r, p, maxmem }, (error, key) => {
      if (error === null) resolve(key);
      else reject(error);
    });
  });

/** `$scrypt$ln=15,r=8,p=3$salt$key`, salt and key in base64: the cost stays with each hash, so that it can grow. */
export const hashPin = async (pin: string, cost: HashCost = hashCost): Promise<string> => {
  const salt = randomBytes(saltBytes);
  const key = await derive(pin, salt, cost);
  const { logN, r, p } = cost;
  return `$scrypt$ln=${logN},r=${r},p=${p}$${salt.toString('base64')}$${key.toString('base64')}`;
};

const stored = /^\$scrypt\$ln=(\d+),r=(\d+),p=(\d+)\$([A-Za-z0-9+/]+=*)\$([A-Za-z0-9+/]+=*)$/;

/** Whether a PIN is the one that was hashed; the keys are compared in constant time. Throws on a broken hash. */
export const verifyPin = async (pin: string, hash: string): Promise<boolean> => {
  const [, logN, r, p, salt, key] = stored.exec(hash) ?? [];
  if (salt === undefined || key === undefined) throw new Error('a stored PIN hash is broken');
  const cost = { logN: Number(logN), r: Number(r), p: Number(p) };
  const wanted = Buffer.from(key, 'base64');
  const given = await derive(pin, Buffer.from(salt, 'base64'), cost);
  return wanted.length === given.length && timingSafeEqual(wanted, given);
};
