import { Glyph } from './glyph';

const rows = ['1234567890', 'qwertyuiop', 'asdfghjkl-', 'zxcvbnm,.'].map((row) =>
  row.split(/(?:)/u),
);

/** Letters for gloves. A screen without a keyboard must not need one. */
export function LetterPad({
  onLetter,
  onRubOut,
  capitals,
}: {
  readonly onLetter: (letter: string) => void;
  readonly onRubOut: () => void;
  readonly capitals: boolean;
}) {
  const key =
    'min-h-glove min-w-glove grow basis-0 rounded-block border-2 border-edge bg-surface text-glance';
  return (
    <div role="group" aria-label="Letters" className="flex max-w-[70rem] flex-col gap-2">
      {rows.map((row) => (
        <div key={row.join('')} className="flex gap-2">
          {row.map((letter) => {
            const shown = capitals ? letter.toUpperCase() : letter;
            return (
              <button
                key={letter}
                type="button"
                className={key}
                onClick={() => {
                  onLetter(shown);
                }}
              >
                {shown}
              </button>
            );
          })}
          {row[0] === 'z' ? (
            <button type="button" className={key} aria-label="Rub out" onClick={onRubOut}>
              <Glyph name="undo" />
            </button>
          ) : null}
        </div>
      ))}
      <button
        type="button"
        className={key}
        onClick={() => {
          onLetter(' ');
        }}
      >
        space
      </button>
    </div>
  );
}
