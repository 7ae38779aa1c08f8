import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import {
  arcMinutesOf,
  bayArcMinutes,
  bayDistanceMm,
  bayScreen,
  capitalRatio,
  gloveTargetMm,
  pixelPitchMm,
} from '@/components/legibility';
import { bayPage } from './job-script/kiosk-browser';
import { signOn } from './job-script/people';
import { touch } from './job-script/touch';
import { wcagFailures } from './job-script/wcag';

const pitchMm = pixelPitchMm(bayScreen);

/** One thing to read, as the browser draws it. */
interface Reading {
  readonly what: string;
  readonly text: string;
  readonly arcMinutes: number;
}

/** Everything the screen marks as instruction or value, and how large its capitals are seen at the bay's distance. */
const readings = async (page: Page): Promise<readonly Reading[]> => {
  const drawn = await page.locator('[data-value]:visible').evaluateAll((elements) =>
    elements.map((element) => ({
      what: element.getAttribute('data-value') ?? '',
      text: element.textContent,
      fontSizePx: Number.parseFloat(getComputedStyle(element).fontSize),
      family: getComputedStyle(element).fontFamily,
    })),
  );
  return drawn.map(({ what, text, fontSizePx, family }) => {
    expect(family).toMatch(/^"?Atkinson Hyperlegible/);
    return {
      what,
      text,
      arcMinutes: arcMinutesOf(fontSizePx * capitalRatio * pitchMm, bayDistanceMm),
    };
  });
};

/** Targets that are smaller than a gloved finger needs. */
const smallTargets = async (page: Page): Promise<readonly string[]> => {
  const targets = await page
    .locator('button:visible, a:visible, input:visible, textarea:visible, [role="button"]:visible')
    .evaluateAll((elements) =>
      elements.map((element) => {
        const { width, height } = element.getBoundingClientRect();
        return { name: element.textContent, width, height };
      }),
    );
  expect(targets.length).toBeGreaterThan(0);
  return targets
    .filter(({ width, height }) => Math.min(width, height) * pitchMm < gloveTargetMm)
    .map(({ name, width, height }) => `${name}: ${width.toFixed(0)} × ${height.toFixed(0)} px`);
};

interface Found {
  readonly readings: readonly Reading[];
  readonly smallTargets: readonly string[];
  readonly light: readonly string[];
  readonly dark: readonly string[];
}

const screens = [
  'home',
  'sign-on',
  'PIN',
  'step',
  'value pad',
  'value heard',
  'value asked back',
  'reason',
  'ledger',
  'parts',
  'phrases',
  'bolts',
  'order',
  'kiosk settings',
  'torque wanted',
  'adapter',
  'adapter on the wrench',
] as const;
type Screen = (typeof screens)[number];

const found = new Map<Screen, Found>();

const look = async (page: Page, screen: Screen): Promise<void> => {
  await page.emulateMedia({ colorScheme: 'light' });
  const light = await wcagFailures(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await wcagFailures(page);
  found.set(screen, {
    readings: await readings(page),
    smallTargets: await smallTargets(page),
    light,
    dark,
  });
};

const walk = async (page: Page, address: string): Promise<void> => {
  const hands = touch(page);
  const show = async (panel: string): Promise<void> => {
    await hands.press('All phrases and keys');
    await hands.press(new RegExp(`^${panel}`));
  };
  const back = (): Promise<void> => hands.press('Back to the step');
  await page.goto(`${address}/`);
  await look(page, 'home');
  await page.goto(`${address}/bay/bay-1`);
  await page.getByRole('button', { name: /^Tom Ashby/ }).waitFor();
  await look(page, 'sign-on');
  await hands.press(/^Tom Ashby/);
  await look(page, 'PIN');
  await hands.press('Somebody else');
  await signOn(hands);
  await look(page, 'step');
  await hands.press('Type a value');
  await look(page, 'value pad');
  await back();
  await hands.number('31');
  await page.locator('[data-value="heard"]').waitFor();
  await look(page, 'value heard');
  await hands.press('Next');
  await hands.number('5');
  await page.locator('[data-value="asked"]').waitFor();
  await look(page, 'value asked back');
  await hands.press('No');
  await hands.deviation();
  await page.getByLabel('In your own words').waitFor();
  await look(page, 'reason');
  await hands.press('Leave it');
  await hands.ledger();
  await look(page, 'ledger');
  await back();
  await show('Show parts');
  await look(page, 'parts');
  await back();
  await hands.press('All phrases and keys');
  await look(page, 'phrases');
  await hands.press(/^Show bolts/);
  await look(page, 'bolts');
  await back();
  await show('Show the order');
  await look(page, 'order');
  await back();
  await hands.press(/Cannot hear|Listening|Not listening/);
  await look(page, 'kiosk settings');
  await back();
  await hands.number('8.4');
  await hands.press('Next');
  await page.locator('[data-value="window"]').waitFor();
  await look(page, 'torque wanted');
  await hands.press('Adapter');
  await hands.press(/^Crowfoot 13/);
  await hands.press(/^0°/);
  await page.getByRole('status', { name: 'What to set' }).getByText('Set on the wrench').waitFor();
  await look(page, 'adapter');
  await hands.press('Use this adapter');
  await page.getByText(/^Set on the wrench with Crowfoot/).waitFor();
  await look(page, 'adapter on the wrench');
};

beforeAll(async () => {
  const { page, close } = await bayPage({ hasTouch: true });
  try {
    await walk(page, inject('address'));
  } finally {
    await close();
  }
});

const of = (screen: Screen): Found => {
  const one = found.get(screen);
  if (one === undefined) throw new Error(`the screen ${screen} was not reached`);
  return one;
};

describe('from 1.5 m on a 24-inch screen of 1920 × 1080', () => {
  test('the capitals of instruction and values span at least 20 minutes of arc', () => {
    const all = screens.flatMap((screen) => of(screen).readings);
    expect(new Set(all.map(({ what }) => what))).toEqual(
      new Set(['instruction', 'main', 'second', 'window', 'heard', 'asked']),
    );
    expect(all.filter(({ arcMinutes }) => arcMinutes < bayArcMinutes)).toEqual([]);
  });
});

describe.each(screens)('the screen: %s', (screen) => {
  test('has no target smaller than 20 mm each way', () => {
    expect(of(screen).smallTargets).toEqual([]);
  });

  test('meets WCAG 2.2 AA in light and dark as far as axe-core can tell', () => {
    expect(of(screen).light).toEqual([]);
    expect(of(screen).dark).toEqual([]);
  });
});
