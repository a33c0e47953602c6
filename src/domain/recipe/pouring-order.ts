import type { Layer, Soap } from '../book/book.ts';

/**
 * The soaps that layers are made of in the order they are melted: a colour before every blend made from it,
 * otherwise by the layer that first needs it. Need is worked out in the reverse order.
 */
export function pouringOrder(layers: readonly Layer[]): Soap[] {
  const order = new Map<string, Soap>();
  for (const layer of layers) {
    if ('soap' in layer) visit(layer.soap, order);
  }
  return [...order.values()];
}

function visit(soap: Soap, order: Map<string, Soap>): void {
  if (order.has(soap.name)) return;
  for (const { ingredient } of soap.lines) {
    if (ingredient.kind === 'soap') visit(ingredient.soap, order);
  }
  order.set(soap.name, soap);
}
