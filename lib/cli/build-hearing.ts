import { build } from 'esbuild';
import { cp, mkdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The classifier's program is served by ourselves, as the package brings it. */
const audioProgram = [
  'audio_wasm_internal.js',
  'audio_wasm_internal.wasm',
  'audio_wasm_nosimd_internal.js',
  'audio_wasm_nosimd_internal.wasm',
] as const;

const copyAudioProgram = async (): Promise<void> => {
  const require = createRequire(import.meta.url);
  const folder = join(dirname(require.resolve('@mediapipe/tasks-audio')), 'wasm');
  const target = join(root, '.build', 'hearing', 'audio');
  await mkdir(target, { recursive: true });
  await Promise.all(audioProgram.map((name) => cp(join(folder, name), join(target, name))));
};

/** Bundles the recogniser's worker, the classifier's, the audio worklet and the measuring page's script into `.build/hearing`. */
export const buildHearing = async (): Promise<void> => {
  await build({
    absWorkingDir: root,
    entryPoints: {
      worker: 'components/microphone/worker.ts',
      sounds: 'components/microphone/sounds/sounds-worker.ts',
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
  await copyAudioProgram();
};
