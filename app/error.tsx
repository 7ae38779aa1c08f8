'use client';
import { Button } from '@/components/design/button';

/** What is shown when a screen fails: nothing that was stored is lost, and what to do. */
export default function ScreenError({
  error,
  reset,
}: {
  readonly error: Error;
  readonly reset: () => void;
}) {
  return (
    <main className="flex min-h-dvh flex-col items-start justify-center gap-6 p-10">
      <h1 className="text-read font-bold">This screen has failed</h1>
      <p className="max-w-[60rem] text-glance">
        What was stored is safe. Try again; if it fails again, restart the kiosk’s browser, and tell
        whoever looks after the server.
      </p>
      <p className="max-w-[60rem] text-body break-words text-quiet">{error.message}</p>
      <Button kind="main" glyph="turn" onPress={reset}>
        Try again
      </Button>
    </main>
  );
}
