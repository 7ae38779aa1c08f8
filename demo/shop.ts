import type { Person } from '@/lib/people';
import type { Shop, ShopAdapter, TorqueTool, Vehicle } from '@/lib/shop';

const people: Person[] = [
  { id: 'mara-quill', name: 'Mara Quill', role: 'foreman' },
  { id: 'tom-ashby', name: 'Tom Ashby', role: 'mechanic' },
  { id: 'jo-fenn', name: 'Jo Fenn', role: 'mechanic' },
  { id: 'sami-reed', name: 'Sami Reed', role: 'writer' },
];

/** Known to everyone who reads this: they open the demo shop and nothing else. */
export const demoPins: Readonly<Record<string, string>> = {
  'mara-quill': '4071',
  'tom-ashby': '2586',
  'jo-fenn': '9314',
  'sami-reed': '6820',
};

type Tool = Omit<TorqueTool, 'calibration'> & {
  readonly calibratedDaysAgo: number;
  readonly certificate?: string;
  readonly expandedPercent?: number;
};

const tools: readonly Tool[] = [
  {
    id: 'tw-05',
    name: 'Small driver',
    kind: 'dial',
    driveIn: '1/4',
    lowerNm: 1,
    upperNm: 6,
    resolutionNm: 0.1,
    calibratedDaysAgo: 150,
  },
  {
    id: 'tw-25',
    name: 'Quarter-inch wrench',
    kind: 'click',
    driveIn: '1/4',
    effectiveLengthMm: 200,
    lowerNm: 5,
    upperNm: 25,
    resolutionNm: 0.25,
    calibratedDaysAgo: 40,
    certificate: 'FW-2291',
    expandedPercent: 2.4,
  },
  {
    id: 'tw-60',
    name: 'Three-eighths wrench',
    kind: 'click',
    driveIn: '3/8',
    effectiveLengthMm: 260,
    lowerNm: 12,
    upperNm: 60,
    resolutionNm: 0.5,
    calibratedDaysAgo: 210,
    certificate: 'FW-2154',
    expandedPercent: 3.1,
  },
  {
    id: 'tw-200',
    name: 'Half-inch wrench',
    kind: 'click',
    driveIn: '1/2',
    effectiveLengthMm: 420,
    lowerNm: 40,
    upperNm: 200,
    resolutionNm: 1,
    calibratedDaysAgo: 95,
    certificate: 'FW-2240',
    expandedPercent: 2.2,
  },
  {
    id: 'te-135',
    name: 'Electronic wrench with angle',
    kind: 'electronic',
    driveIn: '1/2',
    effectiveLengthMm: 400,
    lowerNm: 7,
    upperNm: 135,
    resolutionNm: 0.1,
    expandedAngleDeg: 2,
    calibratedDaysAgo: 12,
    certificate: 'FW-2307',
    expandedPercent: 1.2,
  },
  // Out of date on purpose: the shop has one that must not prove anything.
  {
    id: 'tw-340',
    name: 'Long half-inch wrench',
    kind: 'click',
    driveIn: '1/2',
    effectiveLengthMm: 610,
    lowerNm: 60,
    upperNm: 340,
    resolutionNm: 2,
    calibratedDaysAgo: 430,
    certificate: 'FW-1872',
    expandedPercent: 2.8,
  },
];

const adapters: readonly ShopAdapter[] = [
  { id: 'cf-13', name: 'Crowfoot 13 mm', lengthMm: 32, lengthsWithinMm: 2, driveIn: '3/8' },
  { id: 'cf-19', name: 'Crowfoot 19 mm', lengthMm: 45, lengthsWithinMm: 2, driveIn: '1/2' },
  { id: 'ext-150', name: 'Flat extension 150', lengthMm: 150, lengthsWithinMm: 3, driveIn: '1/2' },
];

const DAY_MS = 86_400_000;

const daysBefore = (today: string, days: number): string =>
  new Date(Date.parse(`${today.slice(0, 10)}T00:00:00Z`) - days * DAY_MS)
    .toISOString()
    .slice(0, 10);

/**
 * The invented fleet workshop. `today` is an ISO date (or instant); calibrations are dated back from it, so that
 * all but one are valid when the shop is seeded. Intervals as ISO 6789-1:2017: 12 months or 5 000 cycles.
 */
export const demoShop = (today: string): Shop => ({
  name: 'Millbrook fleet workshop',
  bays: [
    { id: 'bay-1', name: 'Bay 1' },
    { id: 'bay-2', name: 'Bay 2' },
    { id: 'bay-3', name: 'Bay 3' },
  ],
  people,
  torqueTools: tools.map(({ calibratedDaysAgo, certificate, expandedPercent, ...tool }) => ({
    ...tool,
    calibration: {
      on: daysBefore(today, calibratedDaysAgo),
      ...(certificate === undefined ? {} : { certificate }),
      ...(expandedPercent === undefined ? {} : { expandedPercent }),
      intervalMonths: 12,
      intervalCycles: 5000,
    },
  })),
  adapters: [...adapters],
  // The month of history is told in it.
  settings: { timeZone: 'UTC' },
});

/** A job that stands open on a bay when the demo shop is seeded. */
export interface DemoJob {
  readonly bay: string;
  readonly procedure: string;
  readonly revision: number;
  readonly vehicle: Vehicle;
  readonly openedBy: string;
}

export const demoJobs: readonly DemoJob[] = [
  {
    bay: 'bay-1',
    procedure: 'front-cover-reseal',
    revision: 1,
    vehicle: {
      plate: 'F-014',
      description: 'Utility vehicle, three-cylinder diesel, grounds crew',
      serial: 'MB-UV-0014',
      odometerKm: 18_420,
    },
    openedBy: 'tom-ashby',
  },
  {
    bay: 'bay-2',
    procedure: 'front-hub-brake',
    revision: 1,
    vehicle: {
      plate: 'F-027',
      description: 'Utility vehicle, flat bed, left front wheel',
      serial: 'MB-UV-0027',
      odometerKm: 41_006,
    },
    openedBy: 'jo-fenn',
  },
  {
    bay: 'bay-3',
    procedure: 'beacon-kit',
    revision: 1,
    vehicle: {
      plate: 'F-033',
      description: 'Light truck, steel cab, gritting crew',
      serial: 'MB-LT-0033',
      odometerKm: 7_815,
    },
    openedBy: 'jo-fenn',
  },
];
