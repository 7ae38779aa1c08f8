/** The key that does the same, small, beside its word. */
export function KeyHint({ keys }: { keys: string }) {
  return (
    <kbd
      aria-hidden="true"
      className="rounded-small border border-current px-[0.4em] font-sans text-note leading-[1.35] opacity-80"
    >
      {keys}
    </kbd>
  );
}
