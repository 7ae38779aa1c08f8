import { expect, test } from 'vitest';
import { readSettings } from '@/lib/config';

test('without any variable the defaults hold', () => {
  expect(readSettings({}, '/srv/baycall')).toEqual({
    ok: true,
    value: { port: 4870, host: '127.0.0.1', dataFolder: '/srv/baycall/data', measure: false },
  });
});

test('each variable is taken as given', () => {
  const environment = {
    PORT: '8080',
    BAYCALL_HOST: '::',
    BAYCALL_DATA: '/var/lib/baycall',
    BAYCALL_MEASURE: '1',
  };
  expect(readSettings(environment, '/srv/baycall')).toEqual({
    ok: true,
    value: { port: 8080, host: '::', dataFolder: '/var/lib/baycall', measure: true },
  });
});

test.each([
  ['PORT', 'abc', 'PORT must be a whole number from 1 to 65535, not "abc".'],
  ['PORT', '', 'PORT must be a whole number from 1 to 65535, not "".'],
  ['PORT', '0', 'PORT must be a whole number from 1 to 65535, not "0".'],
  ['PORT', '65536', 'PORT must be a whole number from 1 to 65535, not "65536".'],
  ['PORT', '80.5', 'PORT must be a whole number from 1 to 65535, not "80.5".'],
  ['BAYCALL_DATA', ' ', 'BAYCALL_DATA must be the path of a folder, not " ".'],
  [
    'BAYCALL_HOST',
    'not a host',
    'BAYCALL_HOST must be a host name or an IP address to listen on, not "not a host".',
  ],
  ['BAYCALL_MEASURE', 'yes', 'BAYCALL_MEASURE must be 0 or 1, not "yes".'],
])('%s=%j is refused in one line', (name, value, line) => {
  expect(readSettings({ [name]: value }, '/srv/baycall')).toEqual({ ok: false, error: line });
});

test('several wrong values are named together, still in one line', () => {
  const read = readSettings({ PORT: '-1', BAYCALL_MEASURE: '2' }, '/srv/baycall');
  expect(read).toEqual({
    ok: false,
    error:
      'PORT must be a whole number from 1 to 65535, not "-1"; BAYCALL_MEASURE must be 0 or 1, not "2".',
  });
});
