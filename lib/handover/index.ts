export { handOver, type HandOver } from './hand-over';
export { handOverSpeech, mostWords } from './speech';
