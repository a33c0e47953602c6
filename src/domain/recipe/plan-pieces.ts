import type { Book, Mold, Soap } from '../book/book.ts';
import { spareName } from '../book/find.ts';
import { exact, one, zero } from '../kernel/exact.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { measuredByHand, type LayerOfBars, type Melt, type OnHandByName } from './melt.ts';
import { meltsOf, type Sitting } from './melt-plan.ts';

/** Whole pieces wanted of a soap from a mold, to lie ready for a later pour. */
export interface PiecesWanted {
  readonly soap: Soap;
  readonly mold: Mold;
  readonly pieces: number;
}

/**
 * The melts that shape pieces ahead, in amounts that a hand can weigh: whole fills, of which all pieces become
 * spares. Leftover soap goes in first where `onHand` has it; spare pieces on hand stay where they are. Fails unless
 * something is wanted, each of it a whole number from 1 from a mold of tiles or embeds.
 */
export function planPieces(
  wanted: readonly PiecesWanted[],
  settings: Pick<Book['settings'], 'scaleStepG'>,
  onHand: OnHandByName,
): Result<Sitting> {
  const [first] = wanted;
  if (first === undefined) return wrong('Nothing is to be shaped. Name a colour and a mold.');
  for (const { soap, mold, pieces } of wanted) {
    if (mold.makes === 'bars')
      return wrong(`${mold.name} makes bars. Name a mold that makes tiles or embeds.`);
    if (!Number.isInteger(pieces) || pieces < 1)
      return wrong(`${spareName(soap, mold)} is ${pieces}. Give a whole number, 1 or more.`);
  }
  const layers = wanted.map(({ soap, mold, pieces }): LayerOfBars => ({
    layer: {
      part: mold.makes === 'tiles' ? 'tiles' : 'embed',
      ...{ layer: '', soap, mold, perBar: exact(pieces) },
    },
    bars: one,
  }));
  const ofSpares = new Set(wanted.map(({ soap, mold }) => spareName(soap, mold)));
  const leftoversAlone: OnHandByName = (name) => (ofSpares.has(name) ? zero : onHand(name));
  const melts = meltsOf(layers, settings, leftoversAlone, measuredByHand).map(allSpare);
  return answer({ batches: [], scaleStepG: settings.scaleStepG, melts, added: [] });
}

/** Nothing is laid into bars, so all that is shaped is spare. */
const allSpare = (melt: Melt): Melt => ({
  ...melt,
  shapes: melt.shapes.map((shape) => ({
    ...shape,
    piecesNeeded: zero,
    sparePieces: shape.fills.times(shape.mold.cavities),
  })),
});
