import { expect, it } from 'vitest';
import { setTorque, torqueAtFastener, type Adapter } from '@/lib/fastening';
import { source } from './record';

const examples = source('Adapter set values, published worked examples', 'printed');

const set = (torque: number, adapter: Adapter): number => {
  const result = setTorque(torque, adapter);
  if (!result.ok) throw new Error(result.error.message);
  return result.value.torqueNm;
};

// The formula has no unit: the lengths of the examples are cm and inches, the torques N·m and lbf·in.
it('sets the wrench as the worked examples do', () => {
  const straight = { wrenchMm: 40, adapterMm: 5, angleDeg: 0 };
  const inches = { wrenchMm: 10, adapterMm: 1.5, angleDeg: 0 };
  examples.number('80, L 40, E 5', set(80, straight), 71.1, { absolute: 0.05 });
  examples.number('135, L 10, E 1.5', set(135, inches), 117.39, { absolute: 0.005 });
  const reversed = { ...inches, angleDeg: 180 };
  examples.number('135 reversed', set(135, reversed), 158.82, { absolute: 0.005 });
  examples.exactly('80 at 90° is unchanged', set(80, { ...straight, angleDeg: 90 }), 80);
  const back = torqueAtFastener(71.1, straight);
  examples.number('back from 71.1', back.ok ? back.value.torqueNm : NaN, 80, { relative: 0.001 });
  expect.hasAssertions();
});
