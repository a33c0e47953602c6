import type { Day } from '../../domain/kernel/day.ts';
import type { RowOfCells } from '../blocks/table-rows.ts';
import { serial } from '../cells/serial.ts';
import {
  harbourDusk,
  heronFlats,
  lanternQuay,
  sandspit,
  tidePool,
  winterBeacon,
} from './designs.ts';

/** The invented ledger runs from its first day to the day before the one it was written for. */
export const firstDay: Day = serial('2025-12-01');
export const demoDay: Day = serial('2026-11-25');
/** What is poured for the season's first fair is to be ready. */
export const firstReadyBy: Day = serial('2026-12-11');

/** Bars sold in a month, January first: quiet after the holidays, strong before them. */
const barsByMonth = [17, 22, 29, 41, 45, 43, 52, 48, 40, 66, 112, 138] as const;

/** How much of all bars sold is of each design. */
export const popularity: Readonly<Record<string, number>> = {
  [lanternQuay]: 0.21,
  [tidePool]: 0.18,
  [heronFlats]: 0.16,
  [harbourDusk]: 0.14,
  [winterBeacon]: 0.17,
  [sandspit]: 0.14,
};

/** Bars that buyers take in the days from `day` on, all designs together. */
export function expectedBars(day: Day, days: number): number {
  let bars = 0;
  for (let at = 0; at < days; at += 1) bars += (barsByMonth[monthOf(day + at)] ?? 0) / 30;
  return bars;
}

/** 0 for January. */
const monthOf = (day: Day): number =>
  new Date((day - serial('1970-01-01')) * 86_400_000).getUTCMonth();

/** No name of a fair tells a year or a season: the demo's days are moved when it is copied. */
const fair = (
  name: string,
  opens: string,
  stallFee: number,
  travel: number,
  hours: number,
): RowOfCells<'fairs'> => ({
  fair: name,
  opens: serial(opens),
  stallFee,
  travel,
  otherCost: 0,
  hours,
});

export const demoFairs: readonly RowOfCells<'fairs'>[] = [
  fair('Pier Market last year', '2025-12-13', 55, 12, 9),
  fair('Lamplight Fair last year', '2025-12-20', 70, 18, 10),
  fair('Net Loft Market', '2026-04-04', 40, 12, 8),
  fair('Tide Fair', '2026-05-09', 45, 22, 8.5),
  fair('Quayside Stalls', '2026-06-20', 45, 12, 8),
  fair('Regatta Stalls', '2026-07-18', 60, 12, 9),
  fair('Ferry Landing Market', '2026-08-15', 40, 12, 8),
  fair('Long Quay Fair', '2026-09-26', 40, 14, 8),
  fair('Lantern Walk', '2026-10-31', 50, 14, 7),
  fair('Breakwater Fair', '2026-11-14', 65, 18, 9.5),
  fair('Pier Market', '2026-12-12', 60, 12, 9),
  fair('Lamplight Fair', '2026-12-19', 75, 18, 10),
];

const planFor = (
  fairName: string,
  readyBy: Day,
  start: number,
  wanted: readonly (readonly [design: string, bars: number])[],
): RowOfCells<'plan'>[] =>
  wanted.map(([design, bars], index) => ({
    planLine: `P-${String(start + index).padStart(2, '0')}`,
    design,
    bars,
    readyBy,
    fair: fairName,
  }));

export const demoPlan: readonly RowOfCells<'plan'>[] = [
  ...planFor('Pier Market', firstReadyBy, 1, [
    [lanternQuay, 28],
    [tidePool, 26],
    [heronFlats, 22],
    [harbourDusk, 20],
    [winterBeacon, 36],
    [sandspit, 26],
  ]),
  ...planFor('Lamplight Fair', firstReadyBy + 7, 7, [
    [lanternQuay, 32],
    [tidePool, 24],
    [heronFlats, 20],
    [harbourDusk, 18],
    [winterBeacon, 30],
  ]),
];
