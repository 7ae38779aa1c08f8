import type { HandOver } from './hand-over';

/** At 150 words a minute, a calm pace of speech (common practice, no source), twenty seconds hold so many. */
export const mostWords = 50;

const words = (text: string): number => text.split(/\s+/).filter((word) => word !== '').length;

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/**
 * The summary in at most twenty seconds of speech: where it stands, what may not be forgotten before the vehicle is
 * started or moved, then what is loose and what was heard last as far as there is time. What is left out is said to
 * stand on the screen.
 */
export const handOverSpeech = ({ where, loose, before, lastHeard }: HandOver): string => {
  const rest = 'The rest is on the screen.';
  const wanted = [
    sentence(where),
    ...(before.length === 0
      ? ['By the record nothing is open on the vehicle.']
      : ['Before it is started or moved:', ...before.map(sentence)]),
    ...loose.map(sentence),
    ...(lastHeard === undefined ? [] : [sentence(`Last: ${lastHeard}`)]),
  ];
  const said: string[] = [];
  let left = mostWords - words(rest);
  for (const one of wanted) {
    if (words(one) > left) return [...said, rest].join(' ');
    said.push(one);
    left -= words(one);
  }
  return said.join(' ');
};
