import type { Revision } from '@/lib/procedure';
import { beaconKit } from './beacon-kit';
import { frontCover } from './front-cover';
import { frontHub } from './front-hub';

export const demoProcedures: readonly Revision[] = [frontCover, frontHub, beaconKit];
