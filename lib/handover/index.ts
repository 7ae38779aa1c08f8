export { handOver, stageWords, subjectOf, type HandOver } from './hand-over';
export { handOverSpeech, mostWords } from './speech';
