import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { wavFile } from '@/components/microphone/wav';
import { buildHearing } from '@/lib/cli/build-hearing';
import { chromiumFlags, findChromium } from '@/lib/cli/chromium';
import { serveHearing, type HearingServer } from '@/lib/cli/hearing-server';
import { hearingFolders } from '@/lib/hearing';

const rateHz = 16_000;
const recordings = join(import.meta.dirname, 'recordings');

/** The samples of a 16-bit mono WAV file with a plain header. */
const samplesOf = (name: string): number[] => {
  const bytes = readFileSync(join(recordings, name));
  return Array.from(
    { length: (bytes.length - 44) / 2 },
    (_, i) => bytes.readInt16LE(44 + 2 * i) / 32_768,
  );
};
const quiet = (s: number): number[] =>
  Array.from({ length: s * rateHz }, (_, i) => 0.0005 * Math.sin(i * i));

let workFolder: string;
let server: HearingServer;
let damaged: HearingServer;
let executablePath: string;

/** A model folder cut short; `fitting`: its manifest says that this is right, so that only the recogniser can tell. */
const damagedFolders = (name: string, fitting: boolean) => {
  const root = join(workFolder, name);
  const own = hearingFolders(process.cwd());
  cpSync(own.models, join(root, 'models', 'speech'), { recursive: true });
  const archive = join(root, 'models', 'speech', 'en-bay-3', 'model.tar.gz');
  truncateSync(archive, 3_000_000);
  if (fitting) {
    const manifest = join(root, 'models', 'speech', 'en-bay-3', 'manifest.json');
    const content = JSON.parse(readFileSync(manifest, 'utf8')) as { archive: object };
    const sha256 = createHash('sha256').update(readFileSync(archive)).digest('hex');
    content.archive = { file: 'model.tar.gz', bytes: 3_000_000, sha256 };
    writeFileSync(manifest, JSON.stringify(content));
  }
  return { ...hearingFolders(root), built: own.built };
};

beforeAll(async () => {
  workFolder = mkdtempSync(join(tmpdir(), 'hearing-'));
  await buildHearing();
  server = await serveHearing(hearingFolders(process.cwd()), { recordings, made: workFolder });
  damaged = await serveHearing(damagedFolders('fitting', true), {});
  const found = await findChromium();
  if (!found.ok) throw new Error(found.error);
  executablePath = found.value;
});
afterAll(async () => {
  await server.close();
  await damaged.close();
  rmSync(workFolder, { recursive: true });
});

const launch = (...flags: string[]): Promise<Browser> =>
  chromium.launch({ executablePath, headless: true, args: [...chromiumFlags(), ...flags] });

const openCheck = async (context: BrowserContext, { origin }: HearingServer): Promise<Page> => {
  const page = await context.newPage();
  await page.goto(`${origin}/hearing/check`);
  await page.waitForFunction(() => 'measure' in window);
  return page;
};

const understoodBy = (page: Page): Promise<unknown[]> =>
  page.evaluate(() =>
    window.measure
      .outcomes()
      .map(({ understanding }) =>
        understanding.kind === 'nothing'
          ? 'nothing'
          : understanding.intent.kind === 'value'
            ? understanding.intent.value
            : understanding.intent.kind,
      ),
  );

describe('with a microphone', () => {
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  const asked: string[] = [];
  const others = (): string[] =>
    asked.filter(
      (url) => !url.startsWith(`${server.origin}/`) && !url.startsWith(`blob:${server.origin}/`),
    );
  /** Errors on the console. */
  const said: string[] = [];

  beforeAll(async () => {
    const spoken = [
      ...quiet(3),
      ...samplesOf('repeat.wav'),
      ...quiet(2),
      ...samplesOf('one-three-seven.wav'),
      ...quiet(2),
    ];
    const file = join(workFolder, 'spoken.wav');
    writeFileSync(file, Buffer.from(wavFile(new Float32Array(spoken), rateHz)));
    browser = await launch(
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-audio-capture=${file}%noloop`,
    );
    context = await browser.newContext({ permissions: ['microphone'] });
    context.on('request', (request) => asked.push(request.url()));
    page = await openCheck(context, server);
    page.on('console', (message) => {
      if (message.type() === 'error') said.push(message.text());
    });
  });
  afterAll(async () => {
    await browser.close();
  });

  it('hears a phrase and a number that are spoken into it', async () => {
    await page.evaluate(() => {
      window.measure.ears.start();
    });
    await page.waitForFunction(() => window.measure.outcomes().length >= 2, undefined, {
      timeout: 60_000,
    });
    expect(await understoodBy(page)).toEqual(['repeat', 137]);
    const states = await page.evaluate(() => window.measure.states);
    expect(states).toEqual(['loading', 'listening']);
  });

  it('asks nothing of any other machine', () => {
    expect(asked.length).toBeGreaterThan(3);
    expect(others()).toEqual([]);
  });

  it('tells a wrench that hammers from the voices before it, with a classifier of its own', async () => {
    const wrench = Array.from({ length: 4 * rateHz }, (_, i) => {
      const sinceBlow = (i % (rateHz / 22)) / rateHz;
      const ring = (hz: number): number => Math.sin(2 * Math.PI * hz * sinceBlow);
      const steel = ring(2100) + ring(3340) + ring(5170);
      return 0.2 * Math.exp(-sinceBlow / 0.012) * steel + 0.01 * Math.sin(i * i);
    });
    const file = join(workFolder, 'wrench.wav');
    writeFileSync(file, Buffer.from(wavFile(Float32Array.from(wrench), rateHz)));
    await page.waitForFunction(() => window.measure.noises.length > 0, undefined, {
      timeout: 60_000,
    });
    await page.evaluate(async () => {
      const { ears, decode } = window.measure;
      await ears.listenTo(await decode('/made/wrench.wav'));
    });
    expect(await page.evaluate(() => window.measure.noises)).toContain('impactTool, loud');
  });

  it('reports nothing off the machine, though the classifier has run for longer than a minute', async () => {
    const sounds = page.workers().find((worker) => worker.url().endsWith('/hearing/sounds.js'));
    if (sounds === undefined) throw new Error('the classifier has no worker');
    // Its package sends statistics once a minute.
    await page.waitForTimeout(65_000);
    expect(others()).toEqual([]);
    expect(said).toEqual([]);
    const refused = await sounds.evaluate(
      () =>
        new Promise<string>((resolve) => {
          addEventListener('securitypolicyviolation', (event) => {
            resolve(event.violatedDirective);
          });
          // Past our own guard, in a turn of its own so that the policy applies.
          setTimeout(() => {
            const request = new XMLHttpRequest();
            request.open('GET', 'http://127.0.0.2:9/');
            request.send();
          });
        }),
    );
    expect(refused).toBe('connect-src');
  });

  it('is under a policy by which the page may neither make code from text nor reach another machine', async () => {
    const tried = await page.evaluate(async () => {
      // What the test itself runs is outside the policy; what it puts off is inside.
      const attempt = (act: () => unknown): Promise<string> =>
        new Promise((resolve) => {
          setTimeout(() => {
            Promise.resolve()
              .then(act)
              .then(
                () => {
                  resolve('allowed');
                },
                (error: unknown) => {
                  resolve(error instanceof Error ? error.name : 'refused');
                },
              );
          });
        });
      return [
        // eslint-disable-next-line @typescript-eslint/no-implied-eval -- just this must be refused
        await attempt(() => new Function('return 1')),
        await attempt(() => fetch('http://127.0.0.2:9/')),
      ];
    });
    expect(tried).toEqual(['EvalError', 'TypeError']);
  });

  it('comes back by itself when the recogniser is killed in the middle of a phrase', async () => {
    await page.evaluate(
      () => void window.measure.listen({ url: '/recordings/one-three-seven.wav' }),
    );
    await page.waitForTimeout(300);
    const [worker] = page.workers();
    if (worker === undefined) throw new Error('there is no worker');
    // The worker cannot answer once it has closed itself.
    await worker
      .evaluate(() => {
        self.close();
      })
      .catch(() => undefined);
    await page.waitForFunction(() => window.measure.states.includes('workerDead'), undefined, {
      timeout: 30_000,
    });
    await page.waitForFunction(() => window.measure.states.at(-1) === 'listening', undefined, {
      timeout: 60_000,
    });
    await page.evaluate(() => window.measure.listen({ url: '/recordings/repeat.wav' }));
    expect(await understoodBy(page)).toEqual(['repeat']);
  });

  it('keeps the sound of a dictated note', async () => {
    const note = await page.evaluate(async () => {
      const { ears, decode } = window.measure;
      const taken = ears.takeNote(2);
      await ears.listenTo(await decode('/recordings/repeat.wav'));
      const made = await taken;
      const bytes = await made?.clip.arrayBuffer();
      return { type: made?.clip.type, bytes: bytes?.byteLength };
    });
    const samples = samplesOf('repeat.wav').length;
    expect(note.type).toBe('audio/wav');
    // The microphone may have been heard for a moment before the recording.
    const more = (note.bytes ?? 0) - (44 + 2 * samples);
    expect(more).toBeGreaterThanOrEqual(0);
    expect(more).toBeLessThan(2 * rateHz);
  });

  it('listens to a recording at any rate as it is: pitch and length stay', async () => {
    for (const rate of [8_000, 22_050, 44_100, 48_000]) {
      const tone = Float32Array.from(
        { length: rate },
        (_, i) => 0.5 * Math.sin((2 * Math.PI * 1000 * i) / rate),
      );
      writeFileSync(join(workFolder, `tone-${rate}.wav`), Buffer.from(wavFile(tone, rate)));
      const heard = await page.evaluate(async (url) => {
        const samples = await window.measure.decode(url);
        let crossings = 0;
        for (let i = 1; i < samples.length; i += 1)
          if ((samples[i - 1] ?? 0) < 0 && (samples[i] ?? 0) >= 0) crossings += 1;
        return { length: samples.length, crossings };
      }, `/made/tone-${rate}.wav`);
      expect(Math.abs(heard.length - 16_000)).toBeLessThanOrEqual(2);
      expect(Math.abs(heard.crossings - 1000)).toBeLessThanOrEqual(2);
    }
  });
});

describe('without leave to use the microphone', () => {
  it('says so, and can still listen to a recording', async () => {
    const browser = await launch();
    const page = await openCheck(await browser.newContext(), server);
    await page.evaluate(() => {
      window.measure.ears.start();
    });
    await page.waitForFunction(() => window.measure.ears.state.kind === 'failed', undefined, {
      timeout: 60_000,
    });
    const reason = await page.evaluate(() => window.measure.states.at(-1));
    expect(['permissionRefused', 'noMicrophone']).toContain(reason);
    await page.evaluate(() => window.measure.listen({ url: '/recordings/repeat.wav' }));
    expect(await understoodBy(page)).toEqual(['repeat']);
    await browser.close();
  });
});

describe('with a model archive that is cut short', () => {
  it('says that the model is corrupt, whether the server finds it or only the recogniser does', async () => {
    const browser = await launch();
    const page = await openCheck(await browser.newContext(), damaged);
    await page.evaluate(() => {
      window.measure.ears.start();
    });
    await page.waitForFunction(() => window.measure.ears.state.kind === 'failed', undefined, {
      timeout: 120_000,
    });
    expect(await page.evaluate(() => window.measure.states)).toEqual(['loading', 'modelCorrupt']);
    const found = await serveHearing(damagedFolders('unfitting', false), {});
    const other = await openCheck(await browser.newContext(), found);
    await other.evaluate(() => {
      window.measure.ears.start();
    });
    await other.waitForFunction(() => window.measure.ears.state.kind === 'failed');
    expect(await other.evaluate(() => window.measure.states)).toEqual(['loading', 'modelCorrupt']);
    await found.close();
    await browser.close();
  });
});
