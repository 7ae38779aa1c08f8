import { describe, expect, test } from 'vitest';
import type { JobEvent } from '@/lib/job';
import { carryOut, lookedAt } from './job-script/carry-out';
import type { Hands } from './job-script/hands';
import { testPage, ownApp } from './job-script/kiosk-browser';
import { keyboard } from './job-script/keyboard';
import { earsGivenUp, foremanAccepts, signOn } from './job-script/people';
import { jobIn, storedEvents, textsOf } from './job-script/record';
import { jobByHand } from './job-script/script';
import { touch } from './job-script/touch';

const decisions = jobByHand.filter(({ how }) => how === 'foreman').length;

/** Does the whole job, and compares the record with the script after every line; answers the record. */
const doJob = async (address: string, job: string, hands: Hands): Promise<readonly JobEvent[]> => {
  const expected: string[] = [];
  let decided = false;
  for (const line of jobByHand) {
    if (line.how !== 'foreman') await carryOut(line, hands);
    else if (!decided) {
      await foremanAccepts(decisions, hands);
      decided = true;
      expected.push(...Array<string>(decisions).fill('deviationDecided accepted'));
    }
    if (line.how !== 'foreman') expected.push(...lookedAt(line), ...line.then);
    await expect
      .poll(async () => textsOf(await storedEvents(address, job)), {
        timeout: 10_000,
        message: `after “${line.say}”`,
      })
      .toEqual(expected);
  }
  await hands.page.getByRole('heading', { name: /^Job closed/ }).waitFor();
  await hands.page.getByText(/^Head [0-9a-f]{64}$/).waitFor();
  return storedEvents(address, job);
};

const waysIn = (events: readonly JobEvent[]): readonly string[] => [
  ...new Set(events.map(({ input }) => input.by)),
];

/** The reasons as they were written, in the order of the script. */
const reasons = (events: readonly JobEvent[]): readonly (string | undefined)[] =>
  events.flatMap(({ happening }) =>
    'reason' in happening
      ? [happening.reason.text]
      : happening.type === 'answerGiven' && happening.answer.kind === 'choice'
        ? [happening.answer.reason?.text]
        : [],
  );

const writtenReasons = [
  'the old gasket is whole and clean',
  'i used a little grease to hold the gasket in place',
  'coolant was seeping at bolt three so all five are tightened again',
  'the old gasket was good so the new one stays in the box',
  'seen and in order',
  'seen and in order',
];

describe('a whole job without a microphone closes, and its record is the same as the spoken one’s', () => {
  test('by touch only', async () => {
    const address = await ownApp();
    const job = await jobIn(address, 'bay-1');
    const page = await testPage({ hasTouch: true });
    await page.goto(`${address}/bay/bay-1`);
    const hands = touch(page);
    await signOn(hands);
    await earsGivenUp(hands);
    const events = await doJob(address, job, hands);
    expect(waysIn(events)).toEqual(['touch']);
    expect(reasons(events)).toEqual(writtenReasons);
  });

  test('by keyboard only', async () => {
    const address = await ownApp();
    const job = await jobIn(address, 'bay-1');
    const page = await testPage();
    await page.goto(`${address}/bay/bay-1`);
    const hands = keyboard(page);
    await signOn(hands);
    await earsGivenUp(hands);
    const events = await doJob(address, job, hands);
    expect(waysIn(events)).toContain('key');
    expect(waysIn(events)).not.toContain('voice');
    expect(reasons(events)).toEqual(writtenReasons);
  });
});
