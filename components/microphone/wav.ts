const headerBytes = 44;

/**
 * Mono samples within ±1 as a 16-bit PCM WAV file.
 * Layout: RIFF header, `fmt ` chunk of 16 bytes, `data` chunk (Microsoft/IBM multimedia programming interface 1.0).
 */
export const wavFile = (samples: Float32Array, rateHz: number): ArrayBuffer => {
  const bytes = samples.length * 2;
  const file = new ArrayBuffer(headerBytes + bytes);
  const view = new DataView(file);
  const text = (at: number, letters: string): void => {
    for (let i = 0; i < letters.length; i += 1) view.setUint8(at + i, letters.charCodeAt(i));
  };
  text(0, 'RIFF');
  view.setUint32(4, headerBytes - 8 + bytes, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rateHz, true);
  view.setUint32(28, rateHz * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, bytes, true);
  samples.forEach((sample, i) => {
    const clipped = Math.max(-1, Math.min(1, sample));
    view.setInt16(headerBytes + 2 * i, Math.round(clipped * 32_767), true);
  });
  return file;
};
