import { z } from 'zod';

/** What is set on this kiosk and stays with it. */
const settingsSchema = z.object({
  /** How it answers aloud: not at all, by tones, or by tones and the machine's own voice. */
  speaksBack: z.enum(['off', 'tones', 'speech']).default('tones'),
  listens: z.boolean().default(true),
  /** `KeyboardEvent.key` that the foot switch sends. */
  footKey: z.string().min(1).max(30).default('F13'),
});
export type KioskSettings = z.infer<typeof settingsSchema>;
export type SpeaksBack = KioskSettings['speaksBack'];

export const usualSettings: KioskSettings = settingsSchema.parse({});

const place = 'baycall-kiosk';

/** As kept in this browser; what cannot be read there is as good as never set. */
export const readSettings = (storage: Pick<Storage, 'getItem'>): KioskSettings => {
  const text = storage.getItem(place);
  if (text === null) return usualSettings;
  const parsed = settingsSchema.safeParse(parseJson(text));
  return parsed.success ? parsed.data : usualSettings;
};

const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // damaged: the settings are set again, nothing else hangs on them
  }
};

export const keepSettings = (storage: Pick<Storage, 'setItem'>, settings: KioskSettings): void => {
  storage.setItem(place, JSON.stringify(settings));
};
