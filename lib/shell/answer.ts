import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { shellEntries } from './entries';

const made = new Map<string, Promise<string>>();

/** The worker's program, with the list of what it keeps in front: another build makes another program. */
const program = async (root: string): Promise<string> => {
  const entries = await shellEntries(root);
  const worker = await readFile(join(root, '.build', 'shell', 'kiosk-worker.js'), 'utf8');
  return `self.kioskShell=${JSON.stringify(entries)};\n${worker}`;
};

/** Answers a GET for the worker that keeps a kiosk's page and opens it without the server. */
export const shellAnswer = async (root: string): Promise<Response> => {
  const text = made.get(root) ?? program(root);
  made.set(root, text);
  return new Response(await text, {
    headers: {
      'content-type': 'text/javascript; charset=utf-8',
      'cache-control': 'no-cache',
      'x-content-type-options': 'nosniff',
    },
  });
};
