// @vitest-environment jsdom
import { describe, expect, test, vi } from 'vitest';
import { AdapterPanel } from '@/components/kiosk/adapter-panel';
import type { AdapterInUse, ToolCabinet } from '@/lib/kiosk';
import type { TorqueTool } from '@/lib/shop';
import { isDisabled, key, press, render, screen } from './dom';

const wrench = (id: string, lengthMm: number, on = '2026-01-10'): TorqueTool => ({
  id,
  name: `${id} wrench`,
  kind: 'click',
  driveIn: '1/2',
  lowerNm: 20,
  upperNm: 200,
  resolutionNm: 1,
  effectiveLengthMm: lengthMm,
  calibration: { on, expandedPercent: 2, intervalMonths: 12, intervalCycles: 5000 },
});
const cabinet: ToolCabinet = {
  tools: [wrench('Long', 400), wrench('Old', 400, '2024-01-10')],
  cycles: {},
  adapters: [
    { id: 'cf', name: 'Crowfoot', lengthMm: 100, lengthsWithinMm: 2, driveIn: '1/2' },
    { id: 'small', name: 'Small crowfoot', lengthMm: 30, lengthsWithinMm: 2, driveIn: '3/8' },
  ],
};
/** 100 N·m ± 10 %. */
const specification = {
  kind: 'target',
  unit: 'N.m',
  target: 100,
  tolerance: { in: 'percent', plus: 10, minus: 10 },
} as const;

const open = (inUse?: AdapterInUse, shop = cabinet) => {
  const onUse = vi.fn<(inUse: AdapterInUse | undefined, by: string) => void>();
  render(
    <AdapterPanel
      label="Calliper bolts"
      specification={specification}
      cabinet={shop}
      inUse={inUse}
      now="2026-03-01T08:00:00Z"
      onUse={onUse}
      onClose={() => undefined}
    />,
  );
  return onUse;
};
const result = (): string => screen.getByRole('status', { name: 'What to set' }).textContent;
/** Opens one of the three fields and chooses to type it. */
const typed = (field: string, digits: string): void => {
  press(new RegExp(`^${field}`));
  press('Type it');
  for (const digit of digits) key(digit);
};

describe('the adapter panel', () => {
  test('says nothing to set before adapter and angle are known', () => {
    open();
    press(/^Crowfoot/);
    expect(result()).toBe('Choose the adapter, its angle and the wrench.');
    expect(isDisabled('Use this adapter')).toBe(true);
  });

  test('takes an adapter of the shop on its best wrench, and shows what to set and why', () => {
    const onUse = open();
    press(/^Crowfoot/);
    press(/^0°/);
    expect(result()).toContain('Set on the wrench80 N·m');
    expect(result()).toContain('100 N·m × 400 mm ÷ (400 mm + 100 mm × cos 0°) = 80 N·m');
    expect(result()).toContain('within ±2 mm');
    press('Use this adapter');
    expect(onUse).toHaveBeenCalledWith(
      {
        name: 'Crowfoot at 0°',
        adapter: { wrenchMm: 400, adapterMm: 100, angleDeg: 0, lengthsWithinMm: 2 },
        tool: 'Long',
        driveIn: '1/2',
      },
      'touch',
    );
  });

  test('says of a wrench that may not be used why', () => {
    open();
    press(/^Crowfoot/);
    press(/^0°/);
    expect(isDisabled(/^Old wrench.*ran out on/)).toBe(true);
    press(/^Adapter/);
    press(/^Small crowfoot/);
    press(/^Wrench/);
    expect(isDisabled(/^Long wrench.*3\/8 in is needed/)).toBe(true);
  });

  test('takes lengths and angle from the number pad and the keyboard', () => {
    const onUse = open(undefined, { tools: [], cycles: {} });
    typed('Adapter', '50');
    typed('Angle', '90');
    typed('Wrench', '300');
    expect(result()).toContain('Set on the wrench100 N·m');
    key('Enter');
    expect(onUse.mock.lastCall).toEqual([
      {
        name: 'Adapter 50 mm at 90°',
        adapter: { wrenchMm: 300, adapterMm: 50, angleDeg: 90, lengthsWithinMm: 2 },
      },
      'key',
    ]);
  });

  test('refuses an angle over half a turn, and a lever turned back to nothing', () => {
    open(undefined, { tools: [], cycles: {} });
    typed('Adapter', '90');
    typed('Angle', '190');
    expect(result()).toBe('The angle is between 0° and 180°.');
    press('From the list');
    press(/^180°/);
    typed('Wrench', '100');
    expect(result()).toBe('90 mm turned back leave too little of a wrench of 100 mm.');
    expect(isDisabled('Use this adapter')).toBe(true);
  });

  test('takes the adapter off again', () => {
    const adapter = { wrenchMm: 400, adapterMm: 100, angleDeg: 0 };
    const onUse = open({ name: 'Crowfoot at 0°', adapter });
    press('Without adapter');
    expect(onUse).toHaveBeenCalledWith(undefined, 'touch');
  });
});
