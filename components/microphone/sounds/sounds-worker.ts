import { errorText } from '@/lib/result';
import { loadClassifier, type SoundClassifier } from './classifier';
import { ownOriginOnly } from './own-origin';
import { newsApart } from './quiet-console';
import type { FromSounds, ToSounds } from './protocol';

// The worker's own globals; the DOM library declares the page's.
interface WorkerScope {
  onmessage: ((event: MessageEvent<ToSounds>) => void) | null;
  postMessage(message: FromSounds): void;
}
const scope = globalThis as unknown as WorkerScope;

globalThis.fetch = ownOriginOnly(location.origin, globalThis.fetch.bind(globalThis));

console.error = newsApart(console.error.bind(console), console.debug.bind(console));

let classifier: SoundClassifier | undefined;

const load = async ({ base, model }: Extract<ToSounds, { kind: 'load' }>): Promise<void> => {
  try {
    classifier = await loadClassifier(base, model);
    scope.postMessage({ kind: 'loaded' });
  } catch (error) {
    scope.postMessage({ kind: 'failed', detail: errorText(error) });
  }
};

scope.onmessage = ({ data }) => {
  if (data.kind === 'load') {
    void load(data);
    return;
  }
  try {
    const labelled = classifier?.classify(data.samples, data.sampleRateHz) ?? [];
    scope.postMessage({ kind: 'classified', id: data.id, labelled });
  } catch (error) {
    scope.postMessage({ kind: 'failed', detail: errorText(error) });
  }
};
