import type { NextConfig } from 'next';

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  serverExternalPackages: ['libsql', 'pino', 'prom-client'],
  devIndicators: false,
  // Types are checked by themselves, once; see lib/cli/checks.mjs.
  typescript: { ignoreBuildErrors: true },
};

export default config;
