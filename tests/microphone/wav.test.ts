import { expect, it } from 'vitest';
import { wavFile } from '@/components/microphone/wav';

const text = (bytes: Uint8Array): string => String.fromCharCode(...bytes);

it('writes the header that RIFF/WAVE prescribes for 16-bit mono PCM', () => {
  const bytes = new Uint8Array(wavFile(new Float32Array([0, 1, -1, 2]), 16_000));
  const view = new DataView(bytes.buffer);
  expect(bytes).toHaveLength(44 + 8);
  expect(text(bytes.slice(0, 4))).toBe('RIFF');
  expect(view.getUint32(4, true)).toBe(44 + 8 - 8);
  expect(text(bytes.slice(8, 16))).toBe('WAVEfmt ');
  expect(view.getUint32(16, true)).toBe(16);
  expect(view.getUint16(20, true)).toBe(1); // PCM
  expect(view.getUint16(22, true)).toBe(1); // one channel
  expect(view.getUint32(24, true)).toBe(16_000);
  expect(view.getUint32(28, true)).toBe(32_000); // bytes a second
  expect(view.getUint16(32, true)).toBe(2); // bytes a sample
  expect(view.getUint16(34, true)).toBe(16); // bits a sample
  expect(text(bytes.slice(36, 40))).toBe('data');
  expect(view.getUint32(40, true)).toBe(8);
});

it('scales samples to 16 bits and clips what is louder than full scale', () => {
  const view = new DataView(wavFile(new Float32Array([0, 0.5, 1, -1, 2]), 16_000));
  const samples = [0, 1, 2, 3, 4].map((i) => view.getInt16(44 + 2 * i, true));
  expect(samples).toEqual([0, 16_384, 32_767, -32_767, 32_767]);
});
