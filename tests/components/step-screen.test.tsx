// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { StepScreen } from '@/components/kiosk/step-screen';
import type { KioskState } from '@/lib/kiosk';
import { chooseTool, type ToolChoice } from '@/lib/metrology';
import { revisionSchema } from '@/lib/procedure';
import type { ShopSettings } from '@/lib/shop';
import { Driver } from '../kiosk/driver';
import { render, screen, within } from './dom';

const quiet = { forming: undefined, cramped: false };
const show = (state: KioskState, settings: ShopSettings = {}, tools?: ToolChoice) =>
  render(
    <StepScreen
      state={state}
      {...quiet}
      tools={tools}
      settings={settings}
      onChoose={() => undefined}
    />,
  );
const figure = (): HTMLElement => screen.getByRole('region', { name: /^Cover/ });
const main = (): string | null | undefined =>
  figure().querySelector('[data-value="main"]')?.textContent;

/** 10 N·m ± 1; with this 8 are set. */
const inUse = { name: 'Crowfoot at 0°', adapter: { wrenchMm: 200, adapterMm: 50, angleDeg: 0 } };

/** The same job, tight by feel. */
const byFeel = (safetyCritical = false): KioskState => {
  const { state } = new Driver().toTighten();
  const { revision } = state.job;
  const groups = revision.groups.map((group) => ({
    ...group,
    safetyCritical,
    passes: [{ id: 'final', stage: 'final', tightening: { kind: 'byFeel' } }],
  }));
  return {
    ...state,
    job: { ...state.job, revision: revisionSchema.parse({ ...revision, groups }) },
  };
};

describe('a step that tightens', () => {
  test('shows the sheet’s figure large', () => {
    show(new Driver().toTighten().state);
    expect(main()).toBe('10.0 N·m');
    expect(figure().textContent).not.toContain('Set on the wrench');
  });

  test('shows with an adapter what to set, how that comes about, and what the fastener gets', () => {
    show(new Driver().toTighten().input({ kind: 'adapter', inUse, via: { by: 'touch' } }).state);
    expect(main()).toBe('8.0 N·m');
    const { textContent } = figure();
    expect(textContent).toContain('Set on the wrench with Crowfoot at 0°, for 10.0 N·m');
    expect(textContent).toContain('accepted on the wrench7.2–8.8 N·m');
    expect(textContent).toContain('10 N·m × 200 mm ÷ (200 mm + 50 mm × cos 0°) = 8 N·m');
  });
});

describe('a torque that must be proven', () => {
  /** 2·√((2 % · 10 / 2)² + (0.05 / √3)²) = 0.208 N·m, JCGM 100 §5.1.2; shown rounded inwards. */
  const tools = chooseTool(
    [
      {
        id: 'tw-25',
        name: 'Quarter-inch wrench',
        kind: 'click',
        driveIn: '1/4',
        lowerNm: 5,
        upperNm: 25,
        resolutionNm: 0.1,
        calibration: {
          on: '2026-01-10',
          certificate: 'C-1',
          expandedPercent: 2,
          intervalMonths: 12,
          intervalCycles: 5000,
        },
      },
    ],
    { torqueNm: 10 },
    '2026-03-31',
    () => 0,
  );
  const withCritical = (safetyCritical: boolean): KioskState => {
    const { state } = new Driver().toTighten();
    const groups = state.job.revision.groups.map((group) => ({ ...group, safetyCritical }));
    return { ...state, job: { ...state.job, revision: { ...state.job.revision, groups } } };
  };

  test('says within what the wrench must read: the limits drawn in by what it may be off', () => {
    show(withCritical(true), {}, tools);
    expect(figure().textContent).toContain('with this tool aim for 9.3–10.7 N·m');
  });

  test('and says nothing of it where the tolerance is accepted as it is', () => {
    show(withCritical(false), {}, tools);
    expect(figure().textContent).not.toContain('Must be proven');
  });
});

describe('a value that is not in spec', () => {
  test('has its reason on the step once it is taken, in one sentence', () => {
    show(new Driver().toTighten().value(12.5).yes().state);
    expect(screen.getByText('12.5 N·m is above 11 N·m, out of spec by 1.5 N·m.')).toBeTruthy();
  });

  test('and none where it is in spec', () => {
    show(new Driver().toTighten().value(10.5).state);
    expect(screen.queryByText(/is within/)).toBeNull();
  });
});

describe('a fastener without a figure', () => {
  test('has none shown, unless the shop wants general ones', () => {
    show(byFeel());
    expect(figure().textContent).toContain('No figure on the sheet');
    expect(screen.queryByText('General guidance, not the maker’s value')).toBeNull();
  });

  test('then has a general one, marked as no maker’s value, with what it assumes', () => {
    show(byFeel(), { showGeneralFigures: true });
    const note = screen.getByRole('region', { name: 'General guidance, not the maker’s value' });
    // 0.2 · 0.75 · 580 MPa · 20.1 mm² · 6 mm = 10.5 N·m, of which two figures are shown
    expect(note.textContent).toMatch(/About 1[01] N·m · 7\.[78] lbf·ft/);
    expect(note.textContent).toContain('too much for plastic, light metal or thin sheet');
    expect(within(note).getAllByRole('listitem').length).toBeGreaterThanOrEqual(3);
    expect(figure().textContent).toContain('recorded as it is, never as in spec');
  });

  test('has none where lives hang on it', () => {
    show(byFeel(true), { showGeneralFigures: true });
    expect(screen.queryByText('General guidance, not the maker’s value')).toBeNull();
  });
});
