import { Glyph } from '../design/glyph';

/** Which way round it goes: the usual cause of doing it twice. */
export function OrientationNote({ text }: { text: string }) {
  return (
    <p className="flex items-start gap-4 rounded-block bg-sunk px-5 py-2 text-glance">
      <Glyph name="turn" className="mt-[0.05em] text-act" />
      <span>
        <span className="font-bold">Which way round: </span>
        {text}
      </span>
    </p>
  );
}
