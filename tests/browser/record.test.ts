import { expect, inject, test } from 'vitest';
import { ownApp, testPage } from './job-script/kiosk-browser';
import { jobIn } from './job-script/record';
import { signOnAt } from './job-script/session';

test('a job has a hand-over record to read, and to print for whoever is signed on', async () => {
  const address = await ownApp();
  const job = await jobIn(address, 'bay-1');
  const page = await testPage();
  await page.goto(`${address}/jobs/${job}/record`);
  const text = await page.locator('body').innerText();
  expect(text).toContain('F-014');
  expect(text).toContain('Reseal the front cover and coolant pump');

  const asks = (cookie: string, path: string) =>
    fetch(`${address}/api/jobs/${path}`, { headers: { cookie } });
  expect((await asks('', `${job}/record.pdf`)).status).toBe(401);
  const { cookie } = await signOnAt(address, '/api/session', {
    person: 'tom-ashby',
    pin: '2586',
    bay: 'bay-1',
  });
  const printed = await asks(cookie, `${job}/record.pdf?paper=letter`);
  expect(printed.status).toBe(200);
  expect(printed.headers.get('content-type')).toBe('application/pdf');
  const pdf = Buffer.from(await printed.arrayBuffer()).toString('latin1');
  expect(pdf.startsWith('%PDF-')).toBe(true);
  // Letter is 612 × 792 points.
  expect(pdf).toMatch(/\/MediaBox\s*\[0 0 612 792\]/);
  expect((await asks(cookie, `${job}/record.pdf?paper=a3`)).status).toBe(400);
  const nobody = '00000000-0000-4000-8000-000000000000';
  expect((await asks(cookie, `${nobody}/record.pdf`)).status).toBe(404);
}, 120_000);

test('a foreman takes the events out as a file', async () => {
  const address = inject('address');
  const { cookie } = await signOnAt(address, '/api/foreman', {
    person: 'mara-quill',
    pin: '4071',
  });
  const file = await fetch(`${address}/api/export/events`, { headers: { cookie } });
  expect(file.status).toBe(200);
  const lines = (await file.text()).split('\r\n');
  expect(lines[0]).toBe('job,seq,id,at,actor,role,device,input,type,happening');
  expect(lines.filter((line) => line.includes(',jobOpened,')).length).toBeGreaterThanOrEqual(3);
});
