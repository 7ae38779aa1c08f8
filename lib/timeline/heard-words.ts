import type { HeardBefore, Input } from '../job';

const becameWords: Readonly<Record<HeardBefore['became'], string>> = {
  acted: 'done, with nothing to write down',
  confirmed: 'asked back and confirmed',
  declined: 'asked back and declined',
  saidAgain: 'not sure enough, to be said again',
  notThen: 'not to be said just then',
  notUnderstood: 'not understood',
};

/** Something that was said before an event and made none: "“next”, not understood". */
export const heardBeforeWords = ({ said, became }: HeardBefore): string =>
  `“${said}”, ${becameWords[became]}`;

/** How sure the hearing was of what made an event, and of which words it was not. */
export const surenessWords = ({
  said,
  confidence,
  askedBack,
  unsure = [],
}: Extract<Input, { by: 'voice' }>): string => {
  const words = said.split(' ');
  const doubtful = unsure.flatMap((at) => words[at] ?? []);
  return [
    askedBack ? 'asked back and confirmed' : 'not asked back',
    doubtful.length === 0
      ? `least sure word ${Math.round(confidence * 100)} %`
      : `not sure of “${doubtful.join('”, “')}”`,
  ].join(', ');
};
