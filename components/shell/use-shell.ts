'use client';
import { useEffect, useSyncExternalStore } from 'react';
import { keptPages, workerAddress } from './names';

/** Whether the kiosk opens without the server. `impossible`: the browser allows it only on localhost or with TLS. */
export type ShellState = 'impossible' | 'preparing' | 'kept' | 'failed';

let state: ShellState = 'preparing';
const listeners = new Set<() => void>();
const show = (next: ShellState): void => {
  state = next;
  for (const listener of listeners) listener();
};
const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
};

/** The page and its ears come first: keeping what they are made of waits until they have loaded. */
const beginAfterMs = 8_000;
const lookForNewMs = 3_600_000;

let registration: Promise<ServiceWorkerRegistration | undefined> | undefined;

const register = async (): Promise<ServiceWorkerRegistration | undefined> => {
  if (!('serviceWorker' in navigator)) {
    show('impossible');
    return undefined;
  }
  try {
    const registered = await navigator.serviceWorker.register(workerAddress, {
      updateViaCache: 'none',
    });
    await navigator.serviceWorker.ready;
    await (await caches.open(keptPages)).add(location.pathname);
    show('kept');
    return registered;
  } catch {
    show('failed'); // shown under "This kiosk"; everything else works without
    return undefined;
  }
};

/** Begins with the version that is waiting, if there is one: the page is loaded again with it. */
const beginWithNew = async (): Promise<void> => {
  const registered = await registration;
  if (registered === undefined) return;
  try {
    await registered.update();
  } catch {
    return; // the server is off: what there is goes on
  }
  const { waiting } = registered;
  if (waiting === null) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    location.reload();
  });
  waiting.postMessage({ type: 'SKIP_WAITING' });
};

/** Keeps the kiosk's page for when the server is off. `free`: no job is here, so a new version may begin. */
export const useShell = (free: boolean): void => {
  useEffect(() => {
    const timer = setTimeout(() => {
      registration ??= register();
    }, beginAfterMs);
    const look = setInterval(() => {
      // Only fetched; it begins between jobs.
      void registration?.then((registered) => registered?.update().catch(() => undefined));
    }, lookForNewMs);
    return () => {
      clearTimeout(timer);
      clearInterval(look);
    };
  }, []);
  useEffect(() => {
    if (free) void beginWithNew();
  }, [free]);
};

export const useShellState = (): ShellState =>
  useSyncExternalStore(
    subscribe,
    () => state,
    () => 'preparing',
  );
