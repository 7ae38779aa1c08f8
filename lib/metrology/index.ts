export * from './verdict';
export { explainVerdict, type Explanation } from './explain';
export { implausible, type Implausible } from './implausible';
