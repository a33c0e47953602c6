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
  'reversed',
] as const;
export type MoveReason = (typeof moveReasons)[number];

/** What the State column of Batches says; other words are the maker's own and change nothing. */
export const batchStates = { posted: 'posted', undone: 'undone' } as const;
export const saysUndone = (state: string): boolean => nameKey(state) === batchStates.undone;

export const valuations = ['FIFO', 'Average'] as const;
export type Valuation = (typeof valuations)[number];

export const skinStays = ['rinse-off', 'leave-on'] as const;
export type SkinStay = (typeof skinStays)[number];
