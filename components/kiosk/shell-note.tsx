'use client';
import { useShellState, type ShellState } from '../shell/use-shell';

const words: Readonly<Record<ShellState, string>> = {
  preparing: 'The kiosk’s page and its ears are being kept on this machine …',
  kept: 'The kiosk opens again without the server: its page and its ears are kept on this machine.',
  impossible:
    'Do not load this page again while the server is off: a browser keeps it only at localhost or over TLS.',
  failed:
    'This browser does not keep the page: do not load it again while the server is off. What is done is kept all the same.',
};

/** Whether this kiosk can be switched on while the server is off. */
export function ShellNote() {
  return (
    <p role="status" className="text-body">
      {words[useShellState()]}
    </p>
  );
}
