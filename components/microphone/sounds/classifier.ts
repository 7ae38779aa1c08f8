import { AudioClassifier, FilesetResolver } from '@mediapipe/tasks-audio';
import type { Labelled, SoundModelFacts } from './protocol';

export interface SoundClassifier {
  /** What is in the window; of several stretches, the highest score of each label. */
  classify(samples: Float32Array, sampleRateHz: number): readonly Labelled[];
}

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** Throws where the model is not there, or is not what the manifest says. */
const fetchSoundModel = async ({ url, sha256 }: SoundModelFacts): Promise<Uint8Array> => {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  const bytes = await response.arrayBuffer();
  if (hex(await crypto.subtle.digest('SHA-256', bytes)) !== sha256)
    throw new Error('the checksum differs');
  return new Uint8Array(bytes);
};

/** Loads program and model from our own server. `base`: where they are served. */
export const loadClassifier = async (
  base: string,
  model: SoundModelFacts,
): Promise<SoundClassifier> => {
  const modelAssetBuffer = await fetchSoundModel(model);
  const inner = await AudioClassifier.createFromOptions(
    await FilesetResolver.forAudioTasks(`${base}/audio`),
    { baseOptions: { modelAssetBuffer, delegate: 'CPU' } },
  );
  return {
    classify: (samples, sampleRateHz) =>
      inner
        .classify(samples, sampleRateHz)
        .flatMap(({ classifications }) => classifications)
        .flatMap(({ categories }) => categories)
        .map(({ categoryName, score }) => ({ label: categoryName, score })),
  };
};
