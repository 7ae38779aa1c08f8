/** What the demo's people say when they are asked why. Invented. */
export const anotherWay = [
  'I used a little grease on the dowels to hold it',
  'the holder did not reach so I used a strap wrench',
  'cleaned the threads with a wire brush first',
  'warmed the part before fitting it',
  'had to bend the bracket a touch to line it up',
] as const;
export const missing = [
  'thread is burred, chased it with a tap',
  'clip was missing from the kit',
  'the old washer had stuck to the face',
  'cover has a nick near bolt five',
] as const;
export const reused = [
  'the old gasket is whole and soft',
  'no lip and well over the limit',
  'measured flat and clean',
] as const;
export const again = [
  'coolant was seeping at a bolt',
  'I was not sure that the face was clean',
  'the seal sat a little proud',
  'a bolt felt soft',
] as const;
export const leftOut = ['the tester is away', 'the customer did it this morning'] as const;
export const leftOver = ['spare for the glove box', 'the old one went back in'] as const;
export const accepted = [
  'seen and accepted',
  'looked at it with the mechanic, it is sound',
  'within what the maker allows elsewhere',
] as const;
export const recheck = ['accepted, look again after the first run'] as const;
export const doAgain = [
  'do that again with a new washer',
  'tighten it again by the order',
] as const;
export const signed = ['seen on the vehicle', 'checked by hand, holds'] as const;
export const endOfShift = 'End of shift';
