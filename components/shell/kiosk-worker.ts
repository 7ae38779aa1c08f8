import { CacheFirst, ExpirationPlugin, NetworkFirst, Serwist, type PrecacheEntry } from 'serwist';
import { factsOfModels, keptModels, keptPages } from './names';

// The worker's own globals; the DOM library declares the page's.
interface WorkerScope {
  readonly kioskShell: (PrecacheEntry | string)[];
  addEventListener(
    type: 'install',
    listener: (event: { waitUntil(work: Promise<unknown>): void }) => void,
  ): void;
}
const scope = globalThis as unknown as WorkerScope;

/** A server that does not answer in this time is as good as away. */
const patienceS = 4;

/** A gateway may answer in place of a server that is off: then what is kept serves better. */
const noServerTrouble = {
  fetchDidSucceed: ({ response }: { response: Response }): Promise<Response> =>
    response.status >= 500
      ? Promise.reject(new Error(`the server answered ${response.status}`))
      : Promise.resolve(response),
};

/** Varies by headers of the framework's own, which a navigation does not send. */
const anyVariant = { ignoreVary: true, ignoreSearch: true };

const models = new CacheFirst({
  cacheName: keptModels,
  matchOptions: anyVariant,
  plugins: [new ExpirationPlugin({ maxEntries: 4 })],
});

const serwist = new Serwist({
  precacheEntries: scope.kioskShell,
  precacheOptions: { cleanupOutdatedCaches: true, concurrency: 4 },
  // A new version waits until the kiosk has no job; see use-shell.
  skipWaiting: false,
  clientsClaim: true,
  disableDevLogs: true,
  runtimeCaching: [
    {
      // A page is kept with its headers: its policy and the nonce in it stay together.
      matcher: ({ request, url }) =>
        request.mode === 'navigate' && url.pathname.startsWith('/bay/'),
      handler: new NetworkFirst({
        cacheName: keptPages,
        networkTimeoutSeconds: patienceS,
        matchOptions: anyVariant,
        plugins: [noServerTrouble],
      }),
    },
    {
      // Of another build: a page that came from the server before this worker knew of it. Addresses change with content.
      matcher: ({ url }) => url.pathname.startsWith('/_next/static/'),
      handler: async ({ request }) =>
        (await caches.match(request, { ignoreVary: true })) ?? fetch(request),
    },
    {
      matcher: ({ url }) => factsOfModels.includes(url.pathname),
      handler: new NetworkFirst({
        cacheName: keptModels,
        networkTimeoutSeconds: patienceS,
        matchOptions: anyVariant,
        plugins: [noServerTrouble],
      }),
    },
    { matcher: ({ url }) => /^\/hearing\/(model|sound)\//.test(url.pathname), handler: models },
  ],
});

/** Fetches the models with the rest, so that the ears work without the server even if they were never used before. */
const keepModels = async (): Promise<void> => {
  const cache = await caches.open(keptModels);
  for (const path of factsOfModels) {
    const response = await fetch(path, { cache: 'no-store' });
    if (!response.ok) continue; // a server without a model has none to keep
    await cache.put(path, response.clone());
    const { url } = (await response.json()) as { readonly url: string };
    if ((await cache.match(url)) === undefined) await cache.add(url);
  }
};

scope.addEventListener('install', (event) => {
  event.waitUntil(keepModels());
});
serwist.addEventListeners();
