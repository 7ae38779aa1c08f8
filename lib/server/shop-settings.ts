import { shopSettingsSchema } from '../shop';
import { changeSettings } from '../store/shop-records';
import { readJson } from './body';
import { answer, problem } from './problem';
import type { Endpoint } from './route';
import { signedOnToWrite } from './signed-on';

/** PUT /api/shop/settings {showGeneralFigures?, toolsMarkedInSheetUnit?}: a foreman says how the shop works. Answers all settings. */
export const writeShopSettings: Endpoint<unknown> = async (server, request) => {
  const session = await signedOnToWrite(server, request);
  if (!session.ok) return session.error;
  if (session.value.person.role !== 'foreman') {
    return problem('notForeman', 'Only a foreman may change how the shop works.');
  }
  const body = await readJson(request, shopSettingsSchema.strict());
  if (!body.ok) return body.error;
  const settings = await changeSettings(server.store, body.value);
  return settings === undefined
    ? problem('unavailable', 'The shop has not been set up yet.')
    : answer({ settings });
};
