type Say = (...said: readonly unknown[]) => void;

/** The classifier's program says on its error stream what is merely news; that goes where news belongs. */
export const newsApart =
  (error: Say, news: Say): Say =>
  (...said) => {
    const [first] = said;
    (typeof first === 'string' && first.startsWith('INFO:') ? news : error)(...said);
  };
