import { describe, expect, it } from 'vitest';
import type { Vehicle } from '@/lib/shop';
import { event, jobId, vehicle } from '../store/small-shop';
import { errorOf, freshServer } from './kiosk';

const open = async (more: Partial<Vehicle>) => {
  const { kiosk } = await freshServer();
  await kiosk.signOn('ada', '1234');
  const opening = event(1, 1, {
    type: 'jobOpened',
    procedure: 'three-steps',
    revision: 1,
    vehicle: { ...vehicle, ...more },
    bay: 'bay-1',
  });
  return { kiosk, answer: await kiosk.append([kiosk.by(opening)]) };
};

describe('a job is opened', () => {
  it.each([
    ['without a serial', {}],
    ['on a right VIN', { serial: '11111111111111111' }],
    ['on a VIN from where no check digit is asked for', { serial: 'ZZ9AA111500X00001' }],
    ['on another serial, as it stands on the plate', { serial: 'MB-UV-0014' }],
    [
      'on seventeen characters without a check digit, read twice',
      { serial: '11111111111111112', serialAsRead: true as const },
    ],
  ])('%s', async (_, more) => {
    const { kiosk, answer } = await open(more);
    expect(answer.status).toBe(200);
    expect(await kiosk.storedTypes(jobId(1))).toEqual(['jobOpened']);
  });
});

describe('a job is not opened', () => {
  it.each([
    ['on a VIN whose check digit does not fit', '11111111111111112', 'The check digit says 3'],
    ['on a VIN with a letter that no VIN has', '1111111111111111O', '“O” in place 17 (is it 0?)'],
    ['on an empty serial', ' ', 'Type the number on the plate.'],
    ['on signs that are on no plate', '<b>', 'Letters, digits, blanks'],
  ])('%s, whatever the kiosk let through', async (_, serial, message) => {
    const { answer } = await open({ serial });
    expect(errorOf(answer)).toMatchObject({ status: 400, code: 'invalid', index: 0 });
    expect(errorOf(answer).message).toContain(message);
  });
});
