/**
 * What is said in a shop besides phrases: letters, and the commonest words of talk. The second recogniser knows them
 * beside phrases and numbers, so that talk is heard as talk there and not bent into a phrase. Nothing here may sound
 * like a word of a phrase ("know" and no, the letter o and oh): it would cast doubt on every such phrase.
 */
export const letters: readonly string[] = Array.from('bcdefghijklmnpqrstuvwxyz');

export const letterPairs: readonly string[] = letters.flatMap((first) =>
  letters.map((second) => `${first} ${second}`),
);

export const talkWords: readonly string[] = (
  'enter erase rubout go stop start help the you it that this of in is i he was with me my we they not but what all ' +
  'can had have get make like on at yes so up out do if about who which when will just people into year good ' +
  'some them see other than then now look only come its over think also after use how our work first well way even ' +
  'new want because any these give day most us coffee large small medium dark light roast double triple single shot ' +
  'cup sugar milk cream ounce thing really right here there where yeah okay uh um hey hello please thanks sorry ' +
  'morning lunch car truck wheel oil tire door'
).split(' ');
