import { err, type Result } from '../result';

export interface StatisticsError {
  readonly kind: 'notANumber' | 'tooFew' | 'outOfDomain';
  readonly message: string;
}

export const refuse = (
  kind: StatisticsError['kind'],
  message: string,
): Result<never, StatisticsError> => err({ kind, message });
