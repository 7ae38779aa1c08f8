export * from './verdict';
export { explainVerdict, type Explanation } from './explain';
export { implausible, type Implausible } from './implausible';
export {
  decide,
  guardBands,
  type Conclusion,
  type Decision,
  type DecisionError,
  type GuardBand,
  type Outcome,
} from './decision';
