'use client';
import ScreenError from './error';
import './globals.css';

/** The last resort, in place of the whole page. */
export default function GlobalError(props: { readonly error: Error; readonly reset: () => void }) {
  return (
    <html lang="en-GB">
      <body className="font-sans antialiased">
        <ScreenError {...props} />
      </body>
    </html>
  );
}
