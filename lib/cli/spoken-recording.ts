import { readFileSync, writeFileSync } from 'node:fs';
import { chromium, type Page } from 'playwright-core';
import { endOfSpeechS, repeatable } from '../../components/microphone/measure/mixture';
import { wavFile } from '../../components/microphone/wav';
import type { ScriptLine } from '../../demo/script';
import { chromiumFlags } from './chromium';

const voicesFolder = new URL('../../demo/voices/', import.meta.url);

const rateHz = 16_000;
/** Root mean square −60 dB of full scale. */
const roomAmplitude = 0.001 * Math.sqrt(3);

/** Seconds before the first word: a quiet room, and in it short tones from which a page can tell the recording's time. */
const leadS = 4;
export const toneAtS = [1, 1.3, 1.6, 1.9, 2.2] as const;
const toneS = 0.02;
/** Seconds of quiet after what is said. */
const afterPhraseS = 3;
/** A dictation ends only at a long pause, and its sound is stored first. */
const afterDictationS = 4.5;
/** The foreman reads, writes why and gives a PIN. */
const foremanS = 35;

/** Decodes a recording in the browser, as the kiosk does: a fresh machine has no other decoder. */
const decode = async (page: Page, file: string): Promise<Float32Array> => {
  const flac = readFileSync(new URL(file, voicesFolder)).toString('base64');
  const samples = await page.evaluate(
    async ({ text, hertz }) => {
      const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      const context = new OfflineAudioContext(1, 1, hertz);
      const sound = await context.decodeAudioData(bytes.buffer);
      return Array.from(sound.getChannelData(0), (sample) => Math.round(sample * 32_767));
    },
    { text: flac, hertz: rateHz },
  );
  return Float32Array.from(samples, (sample) => sample / 32_767);
};

const silence = (seconds: number): Float32Array => new Float32Array(Math.round(seconds * rateHz));

const lead = (tones: boolean): Float32Array =>
  silence(leadS).map((_, i) => {
    const atS = i / rateHz;
    const sounds = tones && toneAtS.some((from) => atS >= from && atS < from + toneS);
    return sounds ? 0.4 * Math.sin(2 * Math.PI * 1000 * atS) : 0;
  });

/**
 * A quiet room under all of it, as under everything a microphone gives: made voices come from nowhere, and their own
 * silence is quieter than any room.
 */
const inRoom = (samples: Float32Array): Float32Array => {
  const random = repeatable(1);
  return samples.map((sample) => sample + roomAmplitude * (2 * random() - 1));
};

const quietAfter = ({ how }: ScriptLine, next: ScriptLine | undefined): number => {
  if (how === 'foreman') return next?.how === 'foreman' ? 0 : foremanS;
  return how === 'dictation' ? afterDictationS : afterPhraseS;
};

/** Writes what the microphone will hear, 16 kHz mono; answers when the speech of each line ends, s from the start. */
export const writeRecording = async (
  script: readonly ScriptLine[],
  file: string,
  executablePath: string,
  { tones = false } = {},
): Promise<readonly number[]> => {
  const browser = await chromium.launch({ executablePath, args: [...chromiumFlags()] });
  try {
    const page = await browser.newPage();
    const pieces = [lead(tones)];
    const endsS: number[] = [];
    let samples = leadS * rateHz;
    for (const [index, line] of script.entries()) {
      const speech = line.file === '' ? new Float32Array() : await decode(page, line.file);
      const pause = silence(quietAfter(line, script[index + 1]));
      pieces.push(speech, pause);
      endsS.push(samples / rateHz + (endOfSpeechS(speech) ?? speech.length / rateHz));
      samples += speech.length + pause.length;
    }
    const whole = new Float32Array(samples);
    let at = 0;
    for (const piece of pieces) {
      whole.set(piece, at);
      at += piece.length;
    }
    writeFileSync(file, Buffer.from(wavFile(inRoom(whole), rateHz)));
    return endsS;
  } finally {
    await browser.close();
  }
};
