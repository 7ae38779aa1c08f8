/** Pages as they were last served, with their headers. */
export const keptPages = 'kiosk-pages';

/** The models that the ears need, and what the server says of them. */
export const keptModels = 'kiosk-models';

export const factsOfModels: readonly string[] = ['/hearing/model.json', '/hearing/sound.json'];

export const workerAddress = '/kiosk-worker.js';
