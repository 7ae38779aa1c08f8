// @vitest-environment jsdom
import { describe, expect, test, vi } from 'vitest';
import { StartJob } from '@/components/kiosk/start-job';
import type { Vehicle } from '@/lib/shop';
import { fireEvent, isDisabled, press, render, screen } from './dom';

const hub = { procedure: 'hub', revision: 2, title: 'Renew the hub', appliesTo: 'Flat bed' };

const atStart = () => {
  const onStart = vi.fn<(choice: object, vehicle: Vehicle) => void>();
  render(
    <StartJob bay="Bay 1" procedures={[hub]} problem={undefined} busy={false} onStart={onStart} />,
  );
  press(/Renew the hub/);
  return onStart;
};

const type = (label: RegExp, text: string): void => {
  fireEvent.change(screen.getByLabelText(label), { target: { value: text } });
};
const plate = (text = 'F-014'): void => {
  type(/Number plate/, text);
};
const serial = (text: string): void => {
  type(/serial number/, text);
};
const said = (): string => screen.getByRole('status').textContent;

describe('starting a job', () => {
  test('needs a number plate and nothing else', () => {
    const onStart = atStart();
    expect(isDisabled('Start')).toBe(true);
    plate();
    press('Start');
    expect(onStart).toHaveBeenCalledWith(
      { procedure: 'hub', revision: 2 },
      { plate: 'F-014', description: 'Flat bed' },
    );
  });

  test('keeps a VIN tidied up, and shows its model year', () => {
    const onStart = atStart();
    plate();
    serial('1111 1111-111111111');
    expect(said()).toBe('VIN: model year 2001; its check digit fits.');
    press('Start');
    expect(onStart.mock.lastCall?.[1].serial).toBe('11111111111111111');
  });

  test('takes a VIN without a check digit from where none is asked for', () => {
    const onStart = atStart();
    plate();
    serial('ZZ9AA1115K0X00001');
    expect(said()).toBe(
      'VIN: model year 1989 or 2019, if its tenth character is one; no check digit is asked for where it comes from, so read it twice.',
    );
    press('Start');
    expect(onStart).toHaveBeenCalledOnce();
  });

  test('names the letters that no VIN has, and does not start on them', () => {
    const onStart = atStart();
    plate();
    serial('1I11111111111111O');
    expect(said()).toBe(
      '“I” in place 2 (is it 1?) and “O” in place 17 (is it 0?) are in no VIN. Read them again.',
    );
    expect(isDisabled('Start')).toBe(true);
    fireEvent.keyDown(screen.getByLabelText(/serial number/), { key: 'Enter' });
    expect(onStart).not.toHaveBeenCalled();
  });

  test('says what the check digit says; a plate that was read twice is taken as it is', () => {
    const onStart = atStart();
    plate();
    serial('11111111111111112');
    expect(said()).toBe(
      'The check digit says 3, the plate says 1 in place 9: one of the 17 is misread. Read it again.',
    );
    expect(isDisabled('Start')).toBe(true);
    press('Read twice: it stands so on the plate');
    expect(said()).toBe('Taken as it stands on the plate, without a check digit.');
    press('Start');
    expect(onStart.mock.lastCall?.[1]).toMatchObject({
      serial: '11111111111111112',
      serialAsRead: true,
    });
  });

  test('asks anew about another serial after one was read twice', () => {
    atStart();
    plate();
    serial('11111111111111112');
    press('Read twice: it stands so on the plate');
    serial('11111111111111113');
    expect(isDisabled('Start')).toBe(true);
  });

  test('takes any other serial as it is, and says how long a VIN is', () => {
    const onStart = atStart();
    plate();
    serial(' MB-UV-0014 ');
    expect(said()).toBe('Taken as it is: 8 characters. A VIN has 17.');
    press('Start');
    expect(onStart.mock.lastCall?.[1]).toMatchObject({ serial: 'MB-UV-0014' });
  });
});
