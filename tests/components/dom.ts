import { cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach } from 'vitest';

afterEach(cleanup);

export { fireEvent, render, screen, within };

/** Presses a button as a finger does. */
export const press = (name: string | RegExp): void => {
  fireEvent.click(screen.getByRole('button', { name }));
};

/** A key of the keyboard, wherever the focus is. */
export const key = (name: string): void => {
  fireEvent.keyDown(document.body, { key: name });
};

export const isDisabled = (name: string | RegExp): boolean =>
  screen.getByRole<HTMLButtonElement>('button', { name }).disabled;
