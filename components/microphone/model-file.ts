import type { ModelFacts } from './protocol';

export type FetchProblem = 'modelMissing' | 'modelCorrupt';

export class ModelProblem extends Error {
  readonly reason: FetchProblem;
  constructor(reason: FetchProblem, detail: string) {
    super(detail);
    this.reason = reason;
  }
}

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** The package's own store of unpacked models; the name is fixed in it. */
const unpackedStore = '/vosk';
const noteStore = 'baycall-hearing';
const noteKey = '/hearing/unpacked-model';

const deleteUnpacked = (): Promise<void> =>
  new Promise((resolve) => {
    const request = indexedDB.deleteDatabase(unpackedStore);
    // A blocked deletion finishes when the other page closes; nothing here depends on it.
    request.onsuccess =
      request.onerror =
      request.onblocked =
        () => {
          resolve();
        };
  });

/** Which model has been unpacked in this browser, by its address. */
export const unpackedModel = async (): Promise<string | undefined> => {
  const note = await (await caches.open(noteStore)).match(noteKey);
  return note?.text();
};

export const noteUnpacked = async (url: string): Promise<void> => {
  await (await caches.open(noteStore)).put(noteKey, new Response(url));
};

/** Forgets every unpacked model, so that old ones neither fill the disk nor the recogniser's memory. */
export const forgetUnpacked = async (): Promise<void> => {
  await (await caches.open(noteStore)).delete(noteKey);
  await deleteUnpacked();
};

/**
 * Fetches the whole archive with progress and checks its length and SHA-256, so that what the recogniser then takes
 * from the browser's cache under the same address is known to be whole.
 * Throws ModelProblem.
 */
export const fetchModel = async (
  model: ModelFacts,
  onProgress: (loaded: number, total: number) => void,
): Promise<void> => {
  const response = await fetch(model.url);
  if (response.status === 404) throw new ModelProblem('modelMissing', 'the server has no model');
  if (!response.ok || response.body === null)
    throw new ModelProblem('modelCorrupt', `the server answered ${response.status}`);
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let loaded = 0;
  const reader = response.body.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    loaded += value.length;
    onProgress(loaded, model.bytes);
  }
  if (loaded !== model.bytes)
    throw new ModelProblem('modelCorrupt', `${loaded} of ${model.bytes} bytes arrived`);
  const digest = hex(await crypto.subtle.digest('SHA-256', await new Blob(parts).arrayBuffer()));
  if (digest !== model.sha256) throw new ModelProblem('modelCorrupt', 'the checksum differs');
};
