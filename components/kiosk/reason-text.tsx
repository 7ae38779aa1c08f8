import type { Reason } from '@/lib/job';

/** The words of a reason; where only its sound was kept, it says so and offers the sound. */
export function ReasonText({ reason }: { reason: Reason }) {
  return (
    <>
      {reason.text ?? 'Spoken, not written down'}
      {reason.clip === undefined ? null : (
        <audio
          controls
          preload="none"
          src={`/api/clips/${reason.clip}`}
          className="ml-3 inline-block align-middle"
        />
      )}
    </>
  );
}
