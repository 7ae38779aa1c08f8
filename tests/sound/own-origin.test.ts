import { describe, expect, it } from 'vitest';
import { ownOriginOnly } from '@/components/microphone/sounds/own-origin';
import { newsApart } from '@/components/microphone/sounds/quiet-console';

const setUp = () => {
  const asked: string[] = [];
  const inner: typeof fetch = (one) => {
    asked.push(one instanceof Request ? one.url : one.toString());
    return Promise.resolve(new Response('here'));
  };
  return { asked, own: ownOriginOnly('http://kiosk.test:3000', inner) };
};

describe('what the classifier may fetch', () => {
  it('is what our own server has', async () => {
    const { asked, own } = setUp();
    const paths = ['/hearing/audio/program.wasm', 'http://kiosk.test:3000/hearing/sound.json'];
    for (const path of paths) expect(await (await own(path)).text()).toBe('here');
    await own(new Request('http://kiosk.test:3000/hearing/x'));
    expect(asked).toEqual([...paths, 'http://kiosk.test:3000/hearing/x']);
  });

  it('is nothing of any other machine, which is not even asked', async () => {
    const { asked, own } = setUp();
    for (const other of [
      'https://statistics.test/v1/log',
      'http://kiosk.test:3001/',
      'https://kiosk.test:3000/',
      '//other.test/x',
      new URL('https://statistics.test/'),
      new Request('https://statistics.test/'),
    ])
      expect((await own(other, { method: 'POST' })).status).toBe(410);
    expect(asked).toEqual([]);
  });
});

describe('what the classifier writes on the console', () => {
  it('is an error only where it is one', () => {
    const errors: (readonly unknown[])[] = [];
    const news: (readonly unknown[])[] = [];
    const say = newsApart(
      (...said) => errors.push(said),
      (...said) => news.push(said),
    );
    say('INFO: Created a delegate');
    say('E0000 the graph failed');
    say(new Error('INFO: no'));
    expect(news).toEqual([['INFO: Created a delegate']]);
    expect(errors).toHaveLength(2);
  });
});
