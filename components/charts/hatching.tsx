/** Slanting lines to fill a part of a bar with, so that it is told from the rest without its colour. */
export function Hatching({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern
        id={id}
        width={6}
        height={6}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width={6} height={6} className="fill-surface" />
        <line x1={0} x2={0} y1={0} y2={6} strokeWidth={5} className="stroke-act" />
      </pattern>
    </defs>
  );
}
