import { err, ok, type Result } from '@/lib/result';
import type { DeafnessReason } from './failure';
import { sampleRateHz } from './sound';

/** Sound under way from a microphone or a recording, in frames to the port that was given. */
export interface SoundSource {
  readonly sampleRateHz: number;
  stop(): void;
}

const wanted: MediaTrackConstraints = {
  channelCount: 1,
  echoCancellation: true,
  // The model has been trained with noise; cleaning made for telephones takes away what it knows.
  noiseSuppression: false,
  autoGainControl: true,
};

const reasonOf = (error: unknown): DeafnessReason => {
  const name = error instanceof DOMException ? error.name : '';
  return name === 'NotAllowedError' || name === 'SecurityError'
    ? 'permissionRefused'
    : 'noMicrophone';
};

/** Browsers hold sound back until the page has been touched once. */
const resumeWhenAllowed = (context: AudioContext): void => {
  if (context.state !== 'suspended') return;
  const resume = (): void => {
    void context.resume();
  };
  for (const event of ['pointerdown', 'keydown'])
    addEventListener(event, resume, { once: true, capture: true });
  resume();
};

const frameSender = async (
  context: AudioContext,
  workletUrl: string,
  to: MessagePort,
): Promise<AudioWorkletNode> => {
  await context.audioWorklet.addModule(workletUrl);
  const sender = new AudioWorkletNode(context, 'frame-sender', { numberOfOutputs: 0 });
  sender.port.postMessage(to, [to]);
  return sender;
};

/** Opens the microphone; `onLost` is called when it goes away later. */
export const openMicrophone = async (
  workletUrl: string,
  to: MessagePort,
  onLost: () => void,
): Promise<Result<SoundSource, DeafnessReason>> => {
  // Pages that are not secure have no `mediaDevices` at all.
  if (!isSecureContext) return err('notSecure');
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({ audio: wanted });
  } catch (error) {
    return err(reasonOf(error));
  }
  const context = new AudioContext({ sampleRate: sampleRateHz });
  try {
    const sender = await frameSender(context, workletUrl, to);
    context.createMediaStreamSource(stream).connect(sender);
  } catch (error) {
    await context.close();
    throw error;
  }
  resumeWhenAllowed(context);
  for (const track of stream.getTracks()) track.addEventListener('ended', onLost, { once: true });
  return ok({
    sampleRateHz: context.sampleRate,
    stop: () => {
      for (const track of stream.getTracks()) track.stop();
      void context.close();
    },
  });
};
