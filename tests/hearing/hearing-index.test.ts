import { describe, expect, it } from 'vitest';
import { readHearArguments } from '@/lib/cli/hear-arguments';
import { parseIndex } from '@/lib/cli/hearing-index';

describe('index.tsv', () => {
  it('gives files, words, values and units, by the names in its header', () => {
    const text = 'file\tsay\tvalue\tunit\nclean/a.wav\tOne  Twenty\t120\tN.m\nb.flac\tnext\t\t\n';
    expect(parseIndex(text)).toEqual({
      ok: true,
      value: {
        recordings: [
          { file: 'clean/a.wav', say: 'one twenty', value: 120, unit: 'N.m', group: 'clean' },
          { file: 'b.flac', say: 'next', group: '.' },
        ],
        problems: [],
      },
    });
  });

  it('may come with a byte order mark, line ends of another system and columns in another order', () => {
    const parsed = parseIndex('\uFEFFunit\tfile\tvalue\tsay\r\n\ta\\b.ogg\t0.5\thalf\r\n');
    expect(parsed.ok && parsed.value.recordings).toEqual([
      { file: 'a/b.ogg', say: 'half', value: 0.5, group: 'a' },
    ]);
  });

  it('reports lines that name no file or no number, and reads the rest', () => {
    const parsed = parseIndex('file\tsay\tvalue\tunit\n\tx\t\t\na.wav\tx\ttwelve\t\nb.wav\tx\t\t');
    expect(parsed.ok && parsed.value.problems).toEqual([
      'line 2 names no file',
      'line 3: the value "twelve" is no number',
    ]);
    expect(parsed.ok && parsed.value.recordings).toHaveLength(1);
  });

  it('may name voices, or they are found in the names of the files', () => {
    const text = 'file\tsay\tvalue\tunit\tvoice\na_mira_1.wav\tx\t\t\tana\na_mira_2.wav\tx\t\t\t\n';
    const parsed = parseIndex(text, /_(?:an\d+-(\w+)|(mira))_/);
    expect(parsed.ok && parsed.value.recordings.map(({ voice }) => voice)).toEqual(['ana', 'mira']);
  });

  it('is refused without its header', () => {
    expect(parseIndex('a.wav\tx\n')).toMatchObject({ ok: false });
  });
});

describe('the arguments of the measurement', () => {
  it('need a folder', () => {
    expect(readHearArguments([])).toMatchObject({ ok: false });
    expect(readHearArguments(['--dir', '/r'])).toEqual({
      ok: true,
      value: { dir: '/r', snrDbs: [20, 10, 5] },
    });
  });

  it('take noise levels as numbers with commas between', () => {
    const read = readHearArguments(['--dir', '/r', '--noise', '/n', '--snr', '15,-3']);
    expect(read).toEqual({ ok: true, value: { dir: '/r', noise: '/n', snrDbs: [15, -3] } });
    for (const wrong of ['', '5,', 'loud'])
      expect(readHearArguments(['--dir', '/r', '--noise', '/n', '--snr', wrong])).toMatchObject({
        ok: false,
      });
  });

  it('may want the noises by themselves, mixed into nothing', () => {
    const read = readHearArguments(['--dir', '/r', '--noise', '/n', '--snr', 'none']);
    expect(read).toMatchObject({ ok: true, value: { snrDbs: [] } });
  });

  it('take a pattern for voices, and refuse what is none', () => {
    expect(readHearArguments(['--dir', '/r', '--voice', '_(\\w+)_'])).toMatchObject({
      value: { voices: /_(\w+)_/ },
    });
    expect(readHearArguments(['--dir', '/r', '--voice', '('])).toMatchObject({ ok: false });
  });

  it('are refused when one is unknown', () => {
    expect(readHearArguments(['--dir', '/r', '--folder', 'x'])).toMatchObject({ ok: false });
  });
});
