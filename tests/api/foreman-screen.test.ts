import { describe, expect, test } from 'vitest';
import type { Happening, JobEvent } from '@/lib/job';
import { appendForemanEvents } from '@/lib/server/foreman';
import { readForeman, signForemanOff, signForemanOn } from '@/lib/server/foreman-session';
import { event, jobId, opened } from '../store/small-shop';
import { errorOf, Kiosk, openJobServer } from './kiosk';

const why = { text: 'seen' };

/** A phone in the shop: a browser that has signed on at no kiosk. */
const phone = async (kiosk: Kiosk, person = 'finn', pin = '5678') => {
  const screen = new Kiosk(kiosk.server);
  const answer = await screen.send(signForemanOn, undefined, { body: { person, pin } });
  const { body } = answer;
  if (typeof body === 'object' && body !== null && 'device' in body)
    screen.device = String(body.device);
  return { screen, answer };
};

const acts = (screen: Kiosk, events: readonly JobEvent[], job = jobId(1)) =>
  screen.send(appendForemanEvents, { job }, { body: { events } });

const act = (screen: Kiosk, seq: number, happening: Happening) =>
  acts(screen, [screen.foremanEvent(seq, happening)]);

describe('a foreman at a screen of their own', () => {
  test('signs on with a PIN, is known there, and signs off', async () => {
    const { kiosk } = await openJobServer();
    const { screen, answer } = await phone(kiosk);
    expect(answer).toMatchObject({
      status: 200,
      body: { person: { id: 'finn', role: 'foreman' } },
    });
    expect(screen.device).toMatch(/^foreman-[0-9a-f]{20}$/);
    const who = await screen.send(readForeman, undefined, { method: 'GET' });
    expect(who.body).toMatchObject({ session: { person: { id: 'finn' } } });
    await screen.send(signForemanOff, undefined, { method: 'DELETE' });
    expect((await screen.send(readForeman, undefined, { method: 'GET' })).body).toEqual({
      session: null,
    });
  });

  test('answers, holds, lifts the hold and moves a job in any bay; each is an event of theirs', async () => {
    const { kiosk } = await openJobServer();
    await kiosk.append([kiosk.by(event(1, 2, { type: 'foremanCalled' }))]);
    const { screen } = await phone(kiosk);
    const did = [
      await act(screen, 3, { type: 'foremanAnswered' }),
      await act(screen, 4, { type: 'jobHeld', reason: why }),
      await act(screen, 5, { type: 'jobResumed' }),
      await act(screen, 6, { type: 'jobReassigned', bay: 'bay-2', mechanic: 'ada', reason: why }),
    ];
    expect(did.map(({ status }) => status)).toEqual([200, 200, 200, 200]);
    expect((await kiosk.storedTypes()).slice(2)).toEqual([
      'foremanAnswered',
      'jobHeld',
      'jobResumed',
      'jobReassigned',
    ]);
  });

  test('decides a deviation, and the core lets nobody do so who worked on the job', async () => {
    const { kiosk } = await openJobServer();
    const noted = event(1, 2, {
      type: 'deviationNoted',
      kind: 'anotherWay',
      step: 'one',
      reason: why,
    });
    await kiosk.append([kiosk.by(noted)]);
    const { screen } = await phone(kiosk);
    const decided: Happening = {
      type: 'deviationDecided',
      deviation: noted.id,
      decision: 'acceptedRecheckDue',
      reason: why,
    };
    expect((await act(screen, 3, decided)).status).toBe(200);
    const again = event(1, 4, {
      type: 'deviationNoted',
      kind: 'anotherWay',
      step: 'two',
      reason: why,
    });
    await kiosk.server.log.append(jobId(1), [{ ...again, actor: 'finn', role: 'foreman' }]);
    const own = await act(screen, 5, { ...decided, deviation: again.id });
    expect(errorOf(own)).toMatchObject({ status: 409, code: 'ownWork' });
  });

  test('does no work from there', async () => {
    const { kiosk } = await openJobServer();
    const { screen } = await phone(kiosk);
    for (const happening of [
      { type: 'stepDone', step: 'one' },
      { type: 'jobClosed' },
      { type: 'foremanCalled' },
    ] satisfies Happening[])
      expect(errorOf(await act(screen, 2, happening))).toMatchObject({
        status: 403,
        code: 'notForForeman',
      });
    expect(await kiosk.storedTypes()).toEqual(['jobOpened']);
  });

  test('moves no job onto another, into a bay or to a mechanic that the shop has not', async () => {
    const { kiosk } = await openJobServer();
    await kiosk.server.log.append(jobId(2), [opened(2, 'bay-2')]);
    const { screen } = await phone(kiosk);
    const moved = (bay: string, mechanic?: string): Happening => ({
      type: 'jobReassigned',
      bay,
      ...(mechanic === undefined ? {} : { mechanic }),
      reason: why,
    });
    expect(errorOf(await act(screen, 2, moved('bay-2')))).toMatchObject({ code: 'bayTaken' });
    expect(errorOf(await act(screen, 2, moved('bay-9')))).toMatchObject({ code: 'unknownBay' });
    expect(errorOf(await act(screen, 2, moved('bay-1', 'nobody')))).toMatchObject({
      code: 'invalid',
    });
  });
});

describe('refused', () => {
  test('are a mechanic, a wrong PIN, and ever more wrong PINs', async () => {
    const { kiosk } = await openJobServer();
    expect(errorOf((await phone(kiosk, 'ada', '1234')).answer)).toMatchObject({
      status: 403,
      code: 'notForeman',
    });
    const { screen, answer } = await phone(kiosk, 'finn', '0000');
    expect(errorOf(answer)).toMatchObject({ status: 401, code: 'wrongPin' });
    const codes: string[] = [];
    for (let tries = 0; tries < 4; tries += 1) {
      const body = { person: 'finn', pin: '0000' };
      codes.push(errorOf(await screen.send(signForemanOn, undefined, { body })).code);
    }
    expect(codes.at(-1)).toBe('wait');
  });

  test('are events without a session, with the session of a kiosk, or with a PIN and no kiosk', async () => {
    const { kiosk } = await openJobServer();
    const stranger = new Kiosk(kiosk.server);
    const answered: Happening = { type: 'foremanAnswered' };
    expect(errorOf(await act(stranger, 2, answered))).toMatchObject({ status: 401 });
    expect(errorOf(await act(kiosk, 2, answered))).toMatchObject({ status: 401 });
    const { screen } = await phone(kiosk);
    const visit = { person: 'finn', pin: '5678', events: [screen.foremanEvent(2, answered)] };
    const sent = await screen.send(appendForemanEvents, { job: jobId(1) }, { body: visit });
    expect(errorOf(sent)).toMatchObject({ status: 401, code: 'signOn' });
  });

  test('is the name of somebody else, another device, a PIN without a person, another site', async () => {
    const { kiosk } = await openJobServer();
    const { screen } = await phone(kiosk);
    const mine = screen.foremanEvent(2, { type: 'foremanAnswered' });
    expect(errorOf(await acts(screen, [{ ...mine, actor: 'ada' }]))).toMatchObject({
      code: 'notYou',
    });
    expect(errorOf(await acts(screen, [{ ...mine, device: 'kiosk-1' }]))).toMatchObject({
      code: 'notYourKiosk',
    });
    const half = { body: { pin: '5678', events: [mine] } };
    expect(errorOf(await screen.send(appendForemanEvents, { job: jobId(1) }, half))).toMatchObject({
      status: 400,
      code: 'invalid',
    });
    const elsewhere = { body: { events: [mine] }, headers: { origin: 'http://elsewhere.test' } };
    expect(
      errorOf(await screen.send(appendForemanEvents, { job: jobId(1) }, elsewhere)),
    ).toMatchObject({ status: 403, code: 'crossSite' });
  });

  test('is a foreman’s session as a kiosk’s: it opens no bay', async () => {
    const { kiosk } = await openJobServer();
    const { screen } = await phone(kiosk);
    const held = screen.by(event(1, 2, { type: 'jobHeld', reason: why }), {
      actor: 'finn',
      role: 'foreman',
    });
    expect(errorOf(await screen.append([held]))).toMatchObject({ status: 401, code: 'signOn' });
  });
});
