import { describe, expect, test } from 'vitest';
import { demoJobs, demoPins, demoProcedures, demoShop } from '@/demo';
import { shopSchema, vehicleSchema } from '@/lib/shop';

const shop = demoShop('2026-03-15');

describe('the demo shop', () => {
  test('has the shape of a shop', () => {
    expect(shopSchema.parse(shop)).toEqual(shop);
  });

  test('has four people, one of them a foreman, each with a PIN of their own', () => {
    expect(shop.people.map(({ role }) => role)).toEqual([
      'foreman',
      'mechanic',
      'mechanic',
      'writer',
    ]);
    expect(Object.keys(demoPins)).toEqual(shop.people.map(({ id }) => id));
    expect(new Set(Object.values(demoPins)).size).toBe(4);
    for (const pin of Object.values(demoPins)) expect(pin).toMatch(/^\d{4}$/);
  });

  test('has an open job of a known procedure on each of its three bays', () => {
    expect(demoJobs.map(({ bay }) => bay)).toEqual(shop.bays.map(({ id }) => id));
    for (const job of demoJobs) {
      expect(
        demoProcedures.some((r) => r.procedure === job.procedure && r.revision === job.revision),
      ).toBe(true);
      expect(shop.people.find(({ id }) => id === job.openedBy)?.role).toBe('mechanic');
      expect(vehicleSchema.parse(job.vehicle)).toEqual(job.vehicle);
    }
  });

  test('dates calibrations back from today: all within twelve months but one', () => {
    expect(shop.torqueTools.map(({ id, calibration }) => [id, calibration.on])).toEqual([
      ['tw-05', '2025-10-16'],
      ['tw-25', '2026-02-03'],
      ['tw-60', '2025-08-17'],
      ['tw-200', '2025-12-10'],
      ['te-135', '2026-03-03'],
      ['tw-340', '2025-01-09'],
    ]);
  });

  test('takes an instant for today as well as a date', () => {
    expect(demoShop('2026-03-15T22:10:00+01:00')).toEqual(shop);
  });

  test('has a valid wrench for every torque that the procedures ask', () => {
    const valid = shop.torqueTools.filter(({ id }) => id !== 'tw-340');
    for (const torqueNm of [5, 8, 9.5, 12, 15, 22, 38, 44.7, 50, 90, 105, 110, 120, 180])
      expect(valid.some(({ lowerNm, upperNm }) => lowerNm <= torqueNm && torqueNm <= upperNm)).toBe(
        true,
      );
  });
});
