import { once } from 'node:events';
import { createServer, request, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import { chromium } from 'playwright-core';
import { expect, inject, onTestFinished, test } from 'vitest';
import { chromiumFlags, findChromium } from '@/lib/cli/chromium';
import { testFolder } from '../store/fresh-store';
import { startApp } from '@/lib/cli/start-app';
import { signOnAt, type SignedOnBrowser } from './job-script/session';

const bayJob = async (address: string): Promise<{ id: string; seq: number; phase: string }> => {
  const response = await fetch(`${address}/api/bays/bay-1`);
  return ((await response.json()) as { job: { id: string; seq: number; phase: string } }).job;
};

const signOn = (address: string): Promise<SignedOnBrowser> =>
  signOnAt(address, '/api/session', { person: 'tom-ashby', pin: '2586', bay: 'bay-1' });

const hold = async (address: string, job: string, seq: number, me: SignedOnBrowser) =>
  fetch(`${address}/api/jobs/${job}/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address, cookie: me.cookie },
    body: JSON.stringify({
      events: [
        {
          format: 1,
          id: crypto.randomUUID(),
          job,
          seq,
          at: new Date().toISOString(),
          actor: 'tom-ashby',
          role: 'mechanic',
          device: me.device,
          input: { by: 'touch' },
          happening: { type: 'jobHeld', reason: { text: 'parts' } },
        },
      ],
    }),
  });

/** A server that would answer anybody, and counts how often it was asked. */
const otherServer = async () => {
  let asked = 0;
  const server = createServer((_, response) => {
    asked += 1;
    response.end();
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => {
    server.close();
  });
  const { port } = server.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}/`, requests: () => asked };
};

test('a server killed right after it acknowledged has kept it, and so has one that was told to end', async () => {
  const data = testFolder();
  const first = await startApp(data);
  const job = await bayJob(first.address);
  expect(job).toMatchObject({ seq: 1, phase: 'running' });
  const stored = await hold(first.address, job.id, 2, await signOn(first.address));
  expect(stored.status).toBe(200);
  await first.kill();

  const second = await startApp(data);
  expect(await bayJob(second.address)).toMatchObject({ id: job.id, seq: 2, phase: 'held' });
  expect(await second.stop()).toBe(0);

  const third = await startApp(data);
  expect(await bayJob(third.address)).toMatchObject({ id: job.id, seq: 2, phase: 'held' });
  expect(await third.stop()).toBe(0);
});

test('an address that cannot be decoded is refused like every other bad input', async () => {
  const { hostname, port } = new URL(inject('address'));
  const call = request({ hostname, port, path: '/api/bays/%E0%A4%A' }).end();
  const [response] = (await once(call, 'response')) as [IncomingMessage];
  expect(response.statusCode).toBe(400);
  expect(JSON.parse(await text(response))).toMatchObject({ error: { code: 'malformed' } });
});

test('an unknown address and an unknown method are refused in the same form', async () => {
  const nowhere = await fetch(`${inject('address')}/api/nowhere`);
  expect(nowhere.status).toBe(404);
  expect(await nowhere.json()).toMatchObject({ error: { code: 'notFound' } });
  const patch = await fetch(`${inject('address')}/api/session`, { method: 'PATCH' });
  expect(patch.status).toBe(405);
  expect(await patch.json()).toMatchObject({ error: { code: 'method' } });
});

test('a page runs under its strict policy: scripts of the server run, strange ones do not', async () => {
  const found = await findChromium();
  if (!found.ok) throw new Error(found.error);
  const elsewhere = await otherServer();
  const browser = await chromium.launch({
    executablePath: found.value,
    args: [...chromiumFlags()],
  });
  try {
    const page = await browser.newPage();
    const response = await page.goto(`${inject('address')}/`);
    const policy = response?.headers()['content-security-policy'] ?? '';
    const nonce = /'nonce-([^']+)'/.exec(policy)?.[1];
    expect(nonce).toBeDefined();
    const html = (await response?.text()) ?? '';
    const scripts = html.match(/<script[^>]*>/g) ?? [];
    expect(scripts.length).toBeGreaterThan(0);
    expect(scripts.filter((tag) => !tag.includes(`nonce="${nonce ?? ''}"`))).toEqual([]);
    // The framework's own mark, set by its scripts and by no one else.
    await page.waitForFunction(() => 'next' in window);
    const outcome = await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "taken over"';
      document.body.append(script);
      return document.title;
    });
    expect(outcome).not.toBe('taken over');
    const refused = await page.evaluate(
      (address) =>
        fetch(address, { mode: 'no-cors' }).then(
          () => false,
          () => true,
        ),
      elsewhere.address,
    );
    expect(refused).toBe(true);
    expect(elsewhere.requests()).toBe(0);
  } finally {
    await browser.close();
  }
});
