import { join } from 'node:path';

/** What lies where in the data folder. */
export const databaseFile = (dataFolder: string): string => join(dataFolder, 'baycall.db');
export const clipFolder = (dataFolder: string): string => join(dataFolder, 'clips');
