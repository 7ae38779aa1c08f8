/** What stands in a JSON text as it is; most names and values are nothing else. */
const plain = /^[ !#-[\]-~]*$/;
const surrogate = /[\ud800-\udfff]/;
const loneSurrogate = /\p{Surrogate}/u;

const canonicalText = (text: string): string => {
  if (plain.test(text)) return `"${text}"`;
  if (surrogate.test(text) && loneSurrogate.test(text))
    throw new TypeError('half a surrogate pair is no JSON value');
  return JSON.stringify(text);
};

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/**
 * The one text that stands for a JSON value (RFC 8785): members sorted by UTF-16 code units, no white space, numbers
 * and strings as ECMAScript writes them. Members that are `undefined` are left out. Throws on what is no JSON.
 */
export const canonicalJson = (value: unknown): string => {
  if (typeof value === 'string') return canonicalText(value);
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number' && Number.isFinite(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (!isObject(value)) throw new TypeError(`${typeof value} is no JSON value`);
  let members = '';
  // Without an order of its own, sort compares UTF-16 code units.
  for (const name of Object.keys(value).sort()) {
    const member = value[name];
    if (member === undefined) continue;
    members += `${members === '' ? '' : ','}${canonicalText(name)}:${canonicalJson(member)}`;
  }
  return `{${members}}`;
};
