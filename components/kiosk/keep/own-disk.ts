import type { KioskDisk } from './disk';
import { openKioskDisk } from './kiosk-disk';
import { memoryDisk } from './memory-disk';

/** The disk of this browser. `lasting` is false where it keeps nothing, as in a private window. */
export interface OwnDisk {
  readonly disk: KioskDisk;
  readonly lasting: boolean;
}

let opening: Promise<OwnDisk> | undefined;

const open = async (): Promise<OwnDisk> => {
  try {
    const disk = await openKioskDisk();
    // Without this a browser short of space may clear it. A refusal changes nothing here.
    if (window.isSecureContext) void navigator.storage.persist();
    return { disk, lasting: true };
  } catch {
    return { disk: memoryDisk(), lasting: false }; // said on the screen; the server still gets everything
  }
};

/** Opened once for the page. */
export const ownDisk = (): Promise<OwnDisk> => (opening ??= open());
