import { nameKey } from '../kernel/names.ts';

/** The fixed words of the tables, as the maker reads them. */

export const materialKinds = ['base', 'colourant', 'fragrance', 'packaging', 'extra'] as const;
export type MaterialKind = (typeof materialKinds)[number];

export const moldUses = ['tiles', 'embeds', 'bars'] as const;
export type MoldUse = (typeof moldUses)[number];

export const layerParts = ['tiles', 'embed', 'pour', 'scent', 'paint', 'pack'] as const;
export type LayerPart = (typeof layerParts)[number];

export const moveReasons = [
  'used',
  'left over',
  'spare',
  'made',
  'sold',
  'wasted',
  'counted',
  'given',
  'sent',
  'reversed',
] as const;
export type MoveReason = (typeof moveReasons)[number];

/** What the Note of something `given` begins with. */
export const givenAs = ['gift', 'tester', 'donation', 'own use'] as const;
const GIVEN = new RegExp(`^(?:${givenAs.join('|')})(?!\\p{L})`, 'u');
export const saysGivenAs = (note: string): boolean => GIVEN.test(nameKey(note));

/** What only batches and sales do with what was made: no material moves for these reasons. */
export const reasonsOfMade: readonly MoveReason[] = ['made', 'left over', 'sold'];

/**
 * What the State column of Batches says; other words are the maker's own and change nothing. Workbooks
 * of format 1 say "posted" for recorded.
 */
export const batchStates = { recorded: 'recorded', undone: 'undone' } as const;
export const readState = (state: string): string =>
  nameKey(state) === 'posted' ? batchStates.recorded : state;
export const saysUndone = (state: string): boolean => nameKey(state) === batchStates.undone;

export const tenders = ['cash', 'card', 'other'] as const;
export type Tender = (typeof tenders)[number];

/** How a place sells: bars on consignment lie there and stay the maker's until they are sold. */
export const sellingWays = ['own stall', 'own shop', 'reseller', 'on consignment'] as const;
export type SellingWay = (typeof sellingWays)[number];

export const valuations = ['FIFO', 'Average'] as const;
export type Valuation = (typeof valuations)[number];

export const skinStays = ['rinse-off', 'leave-on'] as const;
export type SkinStay = (typeof skinStays)[number];
