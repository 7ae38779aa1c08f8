import { mixDown, sampleRateHz } from './sound';

/**
 * Decodes a sound file (what the browser can: WAV, FLAC, Ogg with Opus or Vorbis …) to mono samples at our rate.
 * The browser resamples while decoding. Throws when the file is no sound.
 */
export const decodeRecording = async (file: ArrayBuffer): Promise<Float32Array> => {
  const context = new OfflineAudioContext(1, 1, sampleRateHz);
  const buffer = await context.decodeAudioData(file);
  return mixDown(
    Array.from({ length: buffer.numberOfChannels }, (_, i) => buffer.getChannelData(i)),
  );
};

export const fetchRecording = async (url: string): Promise<Float32Array> => {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`the recording ${url} is not there (${response.status})`);
  return decodeRecording(await response.arrayBuffer());
};

const pause = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });

/** Plays a recording to whoever stands there; settles when it has ended. */
export const playAloud = async (samples: Float32Array<ArrayBuffer>): Promise<void> => {
  const context = new AudioContext({ sampleRate: sampleRateHz });
  const buffer = context.createBuffer(1, Math.max(1, samples.length), sampleRateHz);
  buffer.copyToChannel(samples, 0);
  const source = context.createBufferSource();
  source.buffer = buffer;
  source.connect(context.destination);
  source.start();
  // The end is taken from the length: without a sound device a context may never play.
  await pause(buffer.duration * 1000);
  await context.close();
};

/**
 * Hands a recording over piece by piece. `paced`: no faster than it was spoken;
 * otherwise as fast as it can be listened to.
 */
export const feedRecording = async (
  samples: Float32Array,
  feed: (piece: Float32Array<ArrayBuffer>) => Promise<void>,
  paced: boolean,
  carryOn: () => boolean = () => true,
): Promise<void> => {
  const pieceSamples = sampleRateHz / 10;
  const began = performance.now();
  for (let at = 0; at < samples.length && carryOn(); at += pieceSamples) {
    const dueMs = ((at + pieceSamples) / sampleRateHz) * 1000 - (performance.now() - began);
    if (paced && dueMs > 0) await pause(dueMs);
    await feed(new Float32Array(samples.subarray(at, at + pieceSamples)));
  }
};
