import { build } from 'esbuild';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Bundles the recogniser's worker, the audio worklet and the measuring page's script into `.build/hearing`. */
export const buildHearing = async (): Promise<void> => {
  await build({
    absWorkingDir: root,
    entryPoints: {
      worker: 'components/microphone/worker.ts',
      worklet: 'components/microphone/worklet.ts',
      check: 'components/microphone/measure/check.ts',
    },
    outdir: '.build/hearing',
    bundle: true,
    format: 'iife',
    target: 'es2022',
    minify: true,
    // The recogniser's package holds its own worker as text; its shape must stay as it is.
    legalComments: 'inline',
    logLevel: 'warning',
    tsconfig: 'tsconfig.json',
  });
};
