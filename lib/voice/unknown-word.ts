/** What the recogniser names a sound that is none of its words. */
export const unknownWord = '[unk]';
