import { digitWords, teenWords, tenWords } from './number-words';

const below100 = (n: number): string | undefined => {
  if (n < 10) return digitWords[n];
  if (n < 20) return teenWords[n - 10];
  const tens = tenWords[Math.floor(n / 10) - 2];
  return n % 10 === 0 ? tens : `${tens ?? ''} ${digitWords[n % 10] ?? ''}`;
};

const behind = (head: string, n: number): readonly string[] => {
  if (n === 0) return [head];
  const tail = below100(n) ?? '';
  return [`${head} ${tail}`, `${head} and ${tail}`];
};

const counts = (n: number): readonly string[] => (n === 1 ? ['one', 'a'] : [below100(n) ?? '']);

const cardinals = (n: number): readonly string[] => {
  if (n < 100) return [below100(n) ?? ''];
  const forms: string[] = [];
  const hundred = Math.floor(n / 100);
  if (hundred < 20 && hundred !== 10)
    forms.push(...counts(hundred).flatMap((count) => behind(`${count} hundred`, n % 100)));
  if (n >= 1000)
    for (const count of counts(Math.floor(n / 1000))) {
      const head = `${count} thousand`;
      const left = n % 1000;
      forms.push(
        ...(left < 100
          ? behind(head, left)
          : cardinals(left)
              .filter((form) => !form.startsWith('a '))
              .map((form) => `${head} ${form}`)),
      );
    }
  return forms;
};

/** "one two zero", "one two oh". */
const digitForms = (n: number, digits = String(n)): readonly string[] => {
  const say = (zero: string): string =>
    Array.from(digits)
      .map((digit) => (digit === '0' ? zero : (digitWords[Number(digit)] ?? '')))
      .join(' ');
  return [say('zero'), say('oh')];
};

/** "one twenty", "nineteen fifty", "nineteen oh five". */
const pairForms = (n: number): readonly string[] => {
  const head = below100(Math.floor(n / 100)) ?? '';
  const low = n % 100;
  if (low >= 10) return [`${head} ${below100(low) ?? ''}`];
  return n >= 1000 && low > 0 ? [`${head} oh ${digitWords[low] ?? ''}`] : [];
};

const wholeForms = (n: number): readonly string[] => {
  const forms = [...cardinals(n)];
  if (n >= 10 && n <= 9999) forms.push(...digitForms(n));
  if (n > 100 && n % 1000 >= 10 && Math.floor(n / 100) !== 10) forms.push(...pairForms(n));
  return forms;
};

/**
 * Every way in which the shop speaks a number: whole 0–9999, up to three decimals, halves.
 * Outside of that, and for more decimals, none.
 */
export const spokenForms = (n: number): readonly string[] => {
  const [wholeText = '', decimalText] = String(n).split('.');
  const whole = Number(wholeText);
  if (!/^\d{1,4}(\.\d{1,3})?$/.test(String(n))) return [];
  if (decimalText === undefined) return [...new Set(wholeForms(whole))];
  const heads = [...wholeForms(whole).filter((form) => !isLongPair(form, whole))];
  const tails = [...digitForms(0, decimalText)];
  if (decimalText.length === 2 && !decimalText.startsWith('0'))
    tails.push(below100(Number(decimalText)) ?? '');
  const forms = heads.flatMap((head) => tails.map((tail) => `${head} point ${tail}`));
  if (whole === 0) forms.push(...tails.flatMap((tail) => [`point ${tail}`, `oh point ${tail}`]));
  if (decimalText === '5')
    forms.push(
      ...(whole === 0 ? ['half', 'a half', 'one half'] : heads.map((head) => `${head} and a half`)),
    );
  return [...new Set(forms)];
};

/** "nineteen fifty": never spoken before a decimal. */
const isLongPair = (form: string, whole: number): boolean =>
  whole >= 1000 && pairForms(whole).includes(form);
