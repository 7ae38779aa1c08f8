export {
  choicesFor,
  isValue,
  leastPhonesApart,
  meaningOf,
  otherWordings,
  whyNotOwn,
} from './own-phrase';
export { personalVoice } from './personal-voice';
export { mostTries, practicePhrase, practicePhrases } from './phrases';
export {
  beginPractice,
  choices,
  ownOf,
  practise,
  toSay,
  troubled,
  type PracticeInput,
  type PracticeState,
} from './practice';
export {
  keptPracticeSchema,
  practiceSchema,
  worksOf,
  type KeptPractice,
  type OwnChoice,
  type PracticeRecord,
  type Practised,
  type Try,
  type Works,
} from './record';
