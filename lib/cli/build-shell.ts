import { build } from 'esbuild';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Bundles the worker that keeps a kiosk's page into `.build/shell`. */
export const buildShell = async (): Promise<void> => {
  await build({
    absWorkingDir: root,
    entryPoints: { 'kiosk-worker': 'components/shell/kiosk-worker.ts' },
    outdir: '.build/shell',
    bundle: true,
    format: 'iife',
    target: 'es2022',
    minify: true,
    define: { 'process.env.NODE_ENV': '"production"' },
    logLevel: 'warning',
    tsconfig: 'tsconfig.json',
  });
};
