/** Why nothing can be heard. */
export const deafnessReasons = [
  'noMicrophone',
  'permissionRefused',
  'notSecure',
  'modelMissing',
  'modelCorrupt',
  'workerDead',
] as const;
export type DeafnessReason = (typeof deafnessReasons)[number];

/** What the screen says about it: what is wrong, and what to do. Touch, keys and foot switch go on working. */
export const deafnessText: Readonly<Record<DeafnessReason, string>> = {
  noMicrophone: 'No microphone found. Plug one in, then press “Listen again”.',
  permissionRefused:
    'This browser may not use the microphone. Allow it in the browser’s settings for this page, then press “Listen again”.',
  notSecure:
    'The browser gives the microphone only to secure pages. Open the kiosk as http://localhost or over https.',
  modelMissing:
    'The speech model is missing on the server. Put one into models/speech (see models/README.md), then press “Listen again”.',
  modelCorrupt:
    'The speech model is damaged. Copy it again into models/speech (see models/README.md), then press “Listen again”.',
  workerDead: 'The recogniser has stopped. It is being started again.',
};
