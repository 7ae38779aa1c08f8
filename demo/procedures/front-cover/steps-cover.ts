import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

/** From the new seal to the tight cover. */
export const stepsCover: Step[] = [
  step({
    id: 'seal-in',
    title: 'New seal in',
    instruction: 'Press the new shaft seal square into the cover in one go.',
    cautions: [
      caution(
        'NOTICE',
        'A tilted seal cannot be straightened.',
        'It leaks, and a new one is needed.',
        'Clean and deburr the bore, oil it, start the seal square.',
      ),
      caution(
        'CAUTION',
        'Press stroke.',
        'Pinched fingers.',
        'Hold the driver by its sleeve and keep hands out of the stroke.',
      ),
    ],
    orientation: 'The side with the spring faces the engine.',
    drawing: 'cover',
    oneShot: true,
    after: ['clean-faces'],
    bookMinutes: 8,
    effects: [
      { kind: 'applies', consumable: 'clean-oil', groups: [], parts: ['shaft-seal'] },
      {
        kind: 'fits',
        part: 'shaft-seal',
        as: 'new',
        uses: [{ kitItem: 'seal', quantity: 1 }],
      },
    ],
    asks: [
      {
        kind: 'value',
        id: 'seal-depth',
        label: 'Depth below the cover face',
        of: { kind: 'other', spec: { kind: 'range', unit: 'mm', lower: 6.4, upper: 7.2 } },
      },
      {
        kind: 'check',
        id: 'seal-square',
        label: 'Seal',
        passesWhen: 'The depth is the same all round and the spring is in place.',
      },
    ],
  }),
  step({
    id: 'marks-before-cover',
    title: 'Marks before the cover',
    instruction: 'Look at the timing marks once more and count what is left inside the case.',
    orientation: 'Both sprocket dots point at each other.',
    after: ['clean-faces'],
    bookMinutes: 3,
    asks: [
      {
        kind: 'check',
        id: 'marks-still-set',
        label: 'Timing marks',
        passesWhen: 'Both dots are in line and the chain is tight.',
      },
      { kind: 'count', id: 'left-inside', label: 'Loose things left inside', expected: 0 },
    ],
  }),
  step({
    id: 'gasket-on',
    title: 'Gasket on',
    instruction: 'Lay the gasket over the two dowels: the old one if whole, else a new one.',
    cautions: [
      caution(
        'NOTICE',
        'Too much sealant.',
        'Strings of it block the oil strainer.',
        'Only a small dab where the sump joint meets the gasket.',
      ),
    ],
    orientation: 'The printed side faces you.',
    drawing: 'cover',
    after: ['marks-before-cover'],
    bookMinutes: 4,
    effects: [
      { kind: 'applies', consumable: 'joint-sealant', groups: [], parts: ['cover-gasket'] },
      {
        kind: 'fits',
        part: 'cover-gasket',
        as: 'asChosen',
        uses: [{ kitItem: 'gasket', quantity: 1 }],
      },
    ],
    asks: [
      {
        kind: 'choice',
        id: 'gasket-choice',
        label: 'Gasket reused or replaced, and why',
        part: 'cover-gasket',
      },
    ],
  }),
  step({
    id: 'cover-on',
    title: 'Cover on',
    instruction: 'Set the cover on the dowels and run all twelve bolts in by hand.',
    cautions: [
      caution(
        'NOTICE',
        'A long bolt in a short hole.',
        'It cracks the block.',
        'Check each length against the drawing before it goes in.',
      ),
    ],
    orientation: 'Short bolts at 2, 5, 6, 7, 10 and 11; the longest at 8 and 9.',
    drawing: 'cover',
    shows: ['cover-bolts'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['seal-in', 'gasket-on'],
    bookMinutes: 8,
    effects: [
      { kind: 'fits', part: 'front-cover', as: 'reused', uses: [] },
      { kind: 'runsIn', groups: ['cover-bolts'], fasteners: 'same', uses: [] },
    ],
  }),
  step({
    id: 'cover-snug',
    title: 'Cover bolts, first pass',
    instruction: 'Snug the cover bolts in the order shown.',
    drawing: 'cover',
    shows: ['cover-bolts'],
    powerTool: 'notAllowed',
    after: ['cover-on'],
    bookMinutes: 5,
    effects: [{ kind: 'tightens', group: 'cover-bolts', pass: 'snug' }],
    asks: [
      {
        kind: 'value',
        id: 'cover-snug-torque',
        label: 'Snug torque, all bolts',
        of: { kind: 'pass', group: 'cover-bolts', pass: 'snug', measure: 'torque', each: false },
      },
    ],
  }),
  step({
    id: 'cover-final',
    title: 'Cover bolts, final pass',
    instruction: 'Tighten the cover bolts in the order shown and say each torque.',
    drawing: 'cover',
    shows: ['cover-bolts'],
    powerTool: 'notAllowed',
    after: ['cover-snug'],
    bookMinutes: 8,
    effects: [{ kind: 'tightens', group: 'cover-bolts', pass: 'final' }],
    asks: [
      {
        kind: 'value',
        id: 'cover-torque',
        label: 'Torque',
        of: { kind: 'pass', group: 'cover-bolts', pass: 'final', measure: 'torque', each: true },
      },
    ],
  }),
];
