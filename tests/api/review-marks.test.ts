import { describe, expect, test } from 'vitest';
import { signForemanOn } from '@/lib/server/foreman-session';
import { finishMark, readMarks, writeMark } from '@/lib/server/review';
import { hashPin } from '@/lib/access';
import { shopServer } from '@/lib/server';
import { jobLog, setUpShop } from '@/lib/store';
import { openMarks } from '@/lib/store/review';
import { publishRevision } from '@/lib/store/procedures';
import { opens, testFolder } from '../store/fresh-store';
import { jobId, noon, opened, smallShop, threeSteps } from '../store/small-shop';
import { errorOf, Kiosk } from './kiosk';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const mark = {
  procedure: 'three-steps',
  revision: 1,
  step: 'two',
  note: 'Say which way it turns.',
};

/** A shop with a job, a foreman at a screen of their own, a mechanic and a writer, each signed on. */
const shop = async () => {
  const folder = testFolder();
  const store = await opens(join(folder, 'baycall.db'));
  onTestFinished(() => store.close());
  const people = [...smallShop.people, { id: 'wren', name: 'Wren', role: 'writer' as const }];
  const cost = { logN: 4, r: 1, p: 1 };
  const pinHashes = Object.fromEntries(
    await Promise.all(people.map(async ({ id }) => [id, await hashPin('5678', cost)] as const)),
  );
  await setUpShop(
    store,
    { shop: { ...smallShop, people }, pinHashes, procedures: [threeSteps] },
    noon,
  );
  await jobLog(store, () => noon).append(jobId(1), [opened(1)]);
  const server = shopServer(
    store,
    folder,
    () => Promise.resolve(false),
    () => noon,
  );
  const foreman = new Kiosk(server);
  await foreman.send(signForemanOn, undefined, { body: { person: 'finn', pin: '5678' } });
  const mechanic = new Kiosk(server);
  await mechanic.signOn('ada', '5678');
  const writer = new Kiosk(server);
  await writer.signOn('wren', '5678');
  return { store, foreman, mechanic, writer };
};

const idOf = (body: unknown): string =>
  typeof body === 'object' && body !== null && 'id' in body ? String(body.id) : '';

const listed = (kiosk: Kiosk, query = '?procedure=three-steps&revision=1') =>
  kiosk.send(readMarks, undefined, { method: 'GET', query });

describe('“change the sheet”', () => {
  test('is a foreman’s decision, and waits for the sheet’s writer', async () => {
    const { store, foreman } = await shop();
    const seen = { job: jobId(1), seq: 1 };
    const kept = await foreman.send(writeMark, undefined, { body: { ...mark, seen } });
    expect(kept.status).toBe(201);
    expect((await listed(foreman)).body).toEqual({
      marks: [
        {
          id: idOf(kept.body),
          procedure: 'three-steps',
          revision: 1,
          title: 'Three steps',
          step: 'two',
          stepTitle: 'two',
          note: 'Say which way it turns.',
          by: { label: 'Finn', role: 'foreman' },
          at: '2025-03-01T12:00:00.000Z',
          seen,
        },
      ],
    });
    expect(await openMarks(store.db)).toEqual(new Map([['three-steps', 1]]));
  });

  test('is nobody else’s', async () => {
    const { mechanic, writer } = await shop();
    for (const kiosk of [mechanic, writer]) {
      const refused = await kiosk.send(writeMark, undefined, { body: mark });
      expect(errorOf(refused)).toMatchObject({ code: 'signOn' });
    }
  });

  test('shows no name to whoever is no foreman', async () => {
    const { foreman, mechanic } = await shop();
    await foreman.send(writeMark, undefined, { body: mark });
    expect((await listed(mechanic)).body).toMatchObject({
      marks: [{ by: { label: 'Foreman 1' } }],
    });
  });

  test('is done when the writer says so, once, and not when the foreman does', async () => {
    const { store, foreman, mechanic, writer } = await shop();
    const kept = await foreman.send(writeMark, undefined, { body: mark });
    const done = { mark: idOf(kept.body) };
    expect((await foreman.send(finishMark, done)).status).toBe(401);
    expect(errorOf(await mechanic.send(finishMark, done))).toMatchObject({ code: 'notYourRole' });
    expect((await writer.send(finishMark, done)).status).toBe(200);
    expect(errorOf(await writer.send(finishMark, done))).toMatchObject({ code: 'conflict' });
    expect((await listed(foreman)).body).toMatchObject({
      marks: [{ done: { by: { label: 'Wren', role: 'writer' } } }],
    });
    expect(await openMarks(store.db)).toEqual(new Map());
  });

  test('is answered by a newer revision', async () => {
    const { store, foreman } = await shop();
    await foreman.send(writeMark, undefined, { body: mark });
    await publishRevision(store.db, {
      ...threeSteps,
      revision: 2,
      publishedAt: '2025-03-02T08:00:00Z',
    });
    expect((await listed(foreman)).body).toMatchObject({
      marks: [{ done: { at: '2025-03-02T08:00:00Z', revision: 2 } }],
    });
    expect(await openMarks(store.db)).toEqual(new Map());
  });

  test('names a revision, a step and a moment that are there', async () => {
    const { foreman } = await shop();
    const refusal = async (body: object): Promise<unknown> =>
      errorOf(await foreman.send(writeMark, undefined, { body: { ...mark, ...body } }));
    expect(await refusal({ revision: 9 })).toMatchObject({ code: 'unknownRevision' });
    expect(await refusal({ step: 'nine' })).toMatchObject({ code: 'invalid' });
    expect(await refusal({ seen: { job: jobId(1), seq: 2 } })).toMatchObject({
      code: 'unknownJob',
    });
    expect(await refusal({ note: '  ' })).toMatchObject({ code: 'invalid' });
    expect(await refusal({ more: 1 })).toMatchObject({ code: 'invalid' });
  });
});
