import { err } from '../result';
import type { Refusal } from './state';

/** A refusal as the outcome of an event: it changed nothing, and `message` says what to do. */
export const refuse = (code: Refusal['code'], message: string) => err<Refusal>({ code, message });
