import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { err, ok, type Result } from '../result';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const knownPaths: readonly string[] = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ...[process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA].flatMap(
    (folder) =>
      folder === undefined
        ? []
        : [
            join(folder, 'Chromium', 'Application', 'chrome.exe'),
            join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
          ],
  ),
  '/snap/bin/chromium',
];

const onPath = (): string | undefined => {
  const folders = (process.env.PATH ?? '').split(process.platform === 'win32' ? ';' : ':');
  return folders
    .flatMap((folder) => names.map((name) => join(folder, name)))
    .find((path) => existsSync(path));
};

const installed = (): string | undefined => onPath() ?? knownPaths.find((path) => existsSync(path));

/** Debian and its kin, as root: the package manager can do it without a question. */
const install = (): void => {
  const apt = (...args: string[]): void => {
    spawnSync('apt-get', ['-qq', ...args], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  };
  apt('update');
  apt('install', '--yes', '--no-install-recommends', 'chromium');
};

/** What BAYCALL_CHROMIUM names, or what is installed; installs nothing. The error is one line. */
export const lookForChromium = (): Result<string, string> => {
  const named = process.env.BAYCALL_CHROMIUM;
  if (named !== undefined && named !== '')
    return existsSync(named)
      ? ok(named)
      : err(`BAYCALL_CHROMIUM names ${named}, which does not exist.`);
  const found = installed();
  return found === undefined
    ? err(
        'Chromium is needed: install it (Debian: apt-get install chromium) or set BAYCALL_CHROMIUM to its path.',
      )
    : ok(found);
};

/** The path of Chromium: BAYCALL_CHROMIUM, or what is installed; on Debian as root it is installed. The error is one line. */
export const findChromium = (): Promise<Result<string, string>> => {
  const found = lookForChromium();
  const named = (process.env.BAYCALL_CHROMIUM ?? '') !== '';
  if (found.ok || named) return Promise.resolve(found);
  if (process.getuid?.() === 0 && existsSync('/etc/debian_version')) {
    console.log('Installing Chromium …');
    install();
    const now = installed();
    if (now !== undefined) return Promise.resolve(ok(now));
  }
  return Promise.resolve(found);
};

/** For a browser without a screen and without a network beyond this machine. */
export const chromiumFlags = (): readonly string[] => [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-background-timer-throttling',
  '--disable-renderer-backgrounding',
  '--disable-backgrounding-occluded-windows',
];
