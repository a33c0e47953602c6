import type { Cell } from '../../workbook/port.ts';

/** What the invented workshop sets otherwise than the defaults, by the setting's name. */
export const demoSettings: Readonly<Record<string, Cell>> = {
  'Labour rate per hour': 17.5,
  'Overhead per bar': 0.4,
  'Sales tax %': 6,
  'Prices include tax': 'yes',
  'Card fee %': 2.4,
  'Card fee fixed': 0.12,
  'Minutes per day': 240,
  'Rest days': 'Sun',
};
