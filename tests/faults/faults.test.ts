import { expect, test } from 'vitest';
import { clockFaults } from '@/lib/cli/faults/clocks';
import { fuzz } from '@/lib/cli/faults/fuzz';
import { killRounds } from '@/lib/cli/faults/kills';
import { networkFaults } from '@/lib/cli/faults/networks';
import { testFolder } from '../store/fresh-store';

// The short form of `npm run faults`, each with a server in a process of its own.
const patient = { timeout: 300_000 };
const nothingLost = { lost: 0, faults: [] };

test(
  'a server killed at any moment has lost nothing that it acknowledged, and every chain holds',
  patient,
  async () => {
    const seen = await killRounds(testFolder(), { rounds: 3, writes: 200, seed: 'test' });
    expect(seen).toMatchObject({ ...nothingLost, acknowledged: 600 });
    // It was killed while kiosks waited for it.
    expect(seen.again).toBeGreaterThan(0);
  },
);

test(
  'over a network that loses, delays, doubles and reorders, every event is stored once',
  patient,
  async () => {
    const seen = await networkFaults(testFolder(), { writes: 200, seed: 'test' });
    expect(seen).toMatchObject(nothingLost);
    expect(seen.acknowledged).toBeGreaterThanOrEqual(200);
    for (const ill of ['lostThere', 'lostBack', 'late', 'twice', 'againLater'] as const)
      expect(seen.ills[ill]).toBeGreaterThan(0);
  },
);

test(
  'a clock that jumps ahead and back loses nothing, and whoever was signed off by it signs on again',
  patient,
  async () => {
    const seen = await clockFaults(testFolder(), { writes: 100, seed: 'test' });
    expect(seen).toMatchObject(nothingLost);
    expect(seen.signedOn).toBeGreaterThan(0);
    expect(seen.anchors).toBeGreaterThan(0);
  },
);

test(
  'requests that are nearly right are refused, without a failure and without a change',
  patient,
  async () => {
    const seen = await fuzz(testFolder(), { requests: 500, seed: 'test' });
    expect(seen).toMatchObject({
      failed: 0,
      hung: 0,
      changed: 0,
      fixedChanged: false,
      faults: [],
      examples: [],
    });
    expect(seen.answers['400']).toBeGreaterThan(0);
  },
);
