import type { Kysely } from 'kysely';
import type { Tables } from './tables';

/** The database itself or a transaction in it. */
export type Reader = Kysely<Tables>;
