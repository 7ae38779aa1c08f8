import { chromium } from 'playwright-core';
import { chromiumFlags, lookForChromium } from '../cli/chromium';
import { readSettings } from '../config';
import type { Result } from '../result';
import { jobBay } from '../store/job-records';
import { atMost } from './at-most';
import type { JobParams } from './jobs';
import { bytes, problem } from './problem';
import type { Endpoint } from './route';
import { signedOnToRead } from './signed-on';

const papers = { a4: 'A4', letter: 'Letter' } as const;

const isPaper = (text: string): text is keyof typeof papers => Object.hasOwn(papers, text);

/** So many browsers at once; each takes some hundred megabytes. */
const mostAtOnce = 2;

/** What prints: where its browser is, or why there is none, and how a page is printed with it. */
export interface Press {
  readonly find: () => Result<string, string>;
  readonly print: (
    browser: string,
    address: string,
    format: string,
  ) => Promise<Uint8Array<ArrayBuffer>>;
}

const pageNumbers =
  '<div style="font-size:8pt;width:100%;text-align:center;color:#000">' +
  '<span class="pageNumber"></span> / <span class="totalPages"></span></div>';

/** Where this server reaches itself. A host that a request names is never asked. */
const ownAddress = (): string | undefined => {
  const settings = readSettings(process.env, process.cwd());
  if (!settings.ok) return undefined;
  const { host, port } = settings.value;
  const name = host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host;
  return `http://${name.includes(':') ? `[${name}]` : name}:${port}`;
};

const print = async (
  executablePath: string,
  address: string,
  format: string,
): Promise<Uint8Array<ArrayBuffer>> => {
  const browser = await chromium.launch({ executablePath, args: [...chromiumFlags()] });
  try {
    const page = await browser.newPage();
    const answered = await page.goto(address, { waitUntil: 'load', timeout: 20_000 });
    if (answered?.ok() !== true) throw new Error(`${address} cannot be opened for printing.`);
    const pdf = await page.pdf({
      format,
      displayHeaderFooter: true,
      headerTemplate: '<span></span>',
      footerTemplate: pageNumbers,
      margin: { top: '12mm', bottom: '14mm', left: '13mm', right: '13mm' },
    });
    return new Uint8Array(pdf);
  } finally {
    await browser.close();
  }
};

/** The endpoint with a press of one's own. */
export const recordPdfBy = (press: Press): Endpoint<JobParams> => {
  const inTurn = atMost(mostAtOnce);
  return async (server, request, { job }) => {
    const session = await signedOnToRead(server, request);
    if (!session.ok) return session.error;
    if ((await jobBay(server.store.db, job)) === undefined)
      return problem('unknownJob', 'There is no such job.');
    const paper = new URL(request.url).searchParams.get('paper') ?? 'a4';
    if (!isPaper(paper)) return problem('invalid', 'The paper is a4 or letter.');
    const browser = press.find();
    const address = ownAddress();
    if (!browser.ok) return problem('unavailable', `No PDF can be made here. ${browser.error}`);
    if (address === undefined) return problem('unavailable', 'No PDF can be made here.');
    const pdf = await inTurn(() =>
      press.print(browser.value, `${address}/jobs/${job}/record`, papers[paper]),
    );
    return pdf.ok
      ? bytes(pdf.value, 'application/pdf')
      : problem('unavailable', 'Other records are being printed. Try again in a moment.');
  };
};

/**
 * GET /api/jobs/JOB/record.pdf?paper=a4|letter: the hand-over record, printed by the Chromium of this machine, for
 * somebody who is signed on.
 */
export const readRecordPdf = recordPdfBy({ find: lookForChromium, print });
