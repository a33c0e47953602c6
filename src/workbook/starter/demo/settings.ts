import type { Cell } from '../../port.ts';

/** What the invented workshop sets otherwise than the defaults, by the setting's name. */
export const demoSettings: Readonly<Record<string, Cell>> = {
  'Labour rate per hour': 18,
  'Overhead per bar': 0.35,
  'Sales tax %': 7,
  'Prices include tax': 'yes',
  'Card fee %': 2.5,
  'Card fee fixed': 0.1,
  'Minutes per day': 180,
  'Rest days': 'Sun',
};
