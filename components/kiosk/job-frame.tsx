'use client';
import type { ReactNode } from 'react';
import { Glyph } from '../design/glyph';

/** The frame of every kiosk screen: what stands above, the one thing in the middle, what can be done below. */
export function JobFrame({
  header,
  alert,
  children,
  footer,
}: {
  readonly header: ReactNode;
  /** One sentence about something that is wrong now. */
  readonly alert: ReactNode;
  readonly children: ReactNode;
  readonly footer: ReactNode;
}) {
  return (
    <div className="flex min-h-dvh flex-col gap-3 px-6 py-4 wide:h-dvh">
      {header}
      {alert}
      <main className="flex min-h-0 grow flex-col gap-4">{children}</main>
      {footer}
    </div>
  );
}

export function Trouble({
  text,
  children,
}: {
  readonly text: string;
  readonly children?: ReactNode;
}) {
  return (
    <div
      role="alert"
      className="flex items-center gap-4 rounded-block border-2 border-bad bg-surface px-5 py-2 text-body"
    >
      <Glyph name="alert" className="text-bad" />
      <p className="grow font-bold">{text}</p>
      {children}
    </div>
  );
}
