import type { Metadata, Viewport } from 'next';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';
import { parseTheme, themeCookie } from '@/components/design/theme';
import './globals.css';

export const metadata: Metadata = {
  title: { default: 'Baycall', template: '%s · Baycall' },
  description:
    'The bay kiosk that carries a whole workshop job by voice, touch, key or foot switch.',
};

export const viewport: Viewport = { width: 'device-width', initialScale: 1 };

export default async function Layout({ children }: { readonly children: ReactNode }) {
  const theme = parseTheme((await cookies()).get(themeCookie)?.value);
  return (
    <html lang="en-GB" data-theme={theme === 'screen' ? undefined : theme}>
      <body className="font-sans antialiased">{children}</body>
    </html>
  );
}
