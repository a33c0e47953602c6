import type { Ingredient, RecipeLine } from '../../domain/book/book.ts';
import { findSoap } from '../../domain/book/find.ts';
import { type Exact, exact, one, sum } from '../../domain/kernel/exact.ts';
import { compareNames, didYouMean, nameKey, quoted, shortened } from '../../domain/kernel/names.ts';
import { answer, type Result, wrong, wrongBecause } from '../../domain/kernel/result.ts';
import { convert } from '../../domain/measure/convert.ts';
import { benchUnitOf } from '../../domain/measure/units.ts';
import { soapDensity } from '../../domain/recipe/density.ts';
import { convertNoting, noted, type Reading } from './context.ts';
import { groupRows, type Rows } from './rows.ts';

type ColourRow = Rows<'colours'>[number];

/** Reads recipes; a blend is read after the colours it is made of, and a circle of blends is named. */
export function readColours(rows: Rows<'colours'>, reading: Reading): void {
  const recipes = groupRows(rows, (row) => row.colour);
  const context = {
    recipes,
    failed: new Set<string>(),
    depths: new Map<string, number>(),
    reading,
  };
  for (const key of recipes.keys()) readColour(key, [], context);
}

/** Far more blends of blends than anyone melts, and few enough to name in one message. */
const DEEPEST_BLEND = 20;

interface Recipes {
  readonly recipes: ReadonlyMap<string, readonly ColourRow[]>;
  /** Colours that could not be read; what uses them is not blamed as well. */
  readonly failed: Set<string>;
  /** How many blends lie one in the other in each colour read; 0 in one that is no blend. */
  readonly depths: Map<string, number>;
  readonly reading: Reading;
}

function readColour(key: string, path: readonly string[], context: Recipes): void {
  const { recipes, failed, depths, reading } = context;
  const rows = recipes.get(key);
  if (rows === undefined || reading.colours.has(key) || failed.has(key)) return;
  const name = rows.map((row) => row.colour).reduce((a, b) => (a <= b ? a : b));
  const first = rows[0];
  if (path.includes(name)) {
    refuseCircle([...path.slice(path.indexOf(name)), name], first, reading);
    failed.add(key);
    return;
  }
  const [outermost] = path;
  if (path.length > DEEPEST_BLEND && outermost !== undefined) {
    refuseDepth(outermost, context);
    failed.add(key);
    return;
  }
  if (reading.materials.has(key)) {
    reading.findings.add(
      'Colours',
      first?.row,
      'Colour',
      `is ${quoted(name)}, which is also a material. Give one another name`,
    );
  }
  for (const row of rows) readColour(nameKey(row.ingredient), [...path, name], context);
  const depth = Math.max(0, ...rows.map((row) => 1 + (depths.get(nameKey(row.ingredient)) ?? -1)));
  depths.set(key, depth);
  if (depth > DEEPEST_BLEND) {
    refuseDepth(name, context);
    failed.add(key);
  }
  const sound = rows.every((row) => !failed.has(nameKey(row.ingredient)));
  const lines = sound && !failed.has(key) ? readLines(name, rows, reading) : undefined;
  if (lines === undefined) {
    failed.add(key);
    reading.findings.excuse('Colours', name);
    return;
  }
  reading.colours.set(key, {
    name,
    lines,
    recipeG: sum(lines.map((line) => line.g)),
    base: undefined,
  });
}

function refuseCircle(
  names: readonly string[],
  first: ColourRow | undefined,
  reading: Reading,
): void {
  const circle = names.map(shortened).join(' → ');
  reading.findings.add(
    'Colours',
    first?.row,
    'Ingredient',
    `makes a circle of blends: ${circle}. A colour can't be made from itself`,
  );
}

function refuseDepth(name: string, { recipes, reading }: Recipes): void {
  reading.findings.add(
    'Colours',
    recipes.get(nameKey(name))?.[0]?.row,
    'Colour',
    `is ${quoted(name)}, a blend of blends more than ${DEEPEST_BLEND} deep. Make it from colours nearer to the base`,
  );
}

function readLines(
  name: string,
  rows: readonly ColourRow[],
  reading: Reading,
): RecipeLine[] | undefined {
  const inParts = rows.filter((row) => row.measure === 'parts');
  if (inParts.length > 0 && inParts.length < rows.length) {
    reading.findings.add(
      'Colours',
      inParts[0]?.row,
      'Measure',
      `is parts, but other lines of ${name} are not. Use parts in all of its lines or in none`,
    );
    return undefined;
  }
  const seen = new Set<string>();
  const lines: RecipeLine[] = [];
  for (const row of rows) {
    if (seen.has(nameKey(row.ingredient))) {
      reading.findings.add(
        'Colours',
        row.row,
        'Ingredient',
        `is ${quoted(row.ingredient)}, which ${name} has already. Add the two amounts into one line`,
      );
    }
    seen.add(nameKey(row.ingredient));
    const line = readLine(row, reading);
    if (line !== undefined) lines.push(line);
  }
  return lines.length === rows.length ? lines.sort(weighOutOrder) : undefined;
}

function readLine(row: ColourRow, reading: Reading): RecipeLine | undefined {
  const ingredient = findIngredient(row.ingredient, reading);
  const place = { table: 'Colours', row: row.row } as const;
  if (!ingredient.ok) {
    if (!reading.findings.excused('Materials', row.ingredient))
      noted(reading, { ...place, column: 'Ingredient' }, ingredient);
    return undefined;
  }
  const amount = exact(row.amount);
  const measured = { ...place, column: 'Measure' };
  const g = noted(reading, measured, lineG(ingredient.value, amount, row.measure, reading));
  const stockPerG = noted(
    reading,
    measured,
    stockUnitsPerG(ingredient.value, row.measure, reading),
  );
  if (g === undefined || stockPerG === undefined) return undefined;
  return { ingredient: ingredient.value, amount, measure: row.measure, g, stockPerG };
}

/** What a recipe line may name: a material, or another colour. */
export function findIngredient(name: string, reading: Reading): Result<Ingredient> {
  const material = reading.materials.get(nameKey(name));
  if (material !== undefined) return answer({ kind: 'material', material });
  const soap = findSoap(reading, name);
  if (soap.ok) return answer({ kind: 'soap', soap: soap.value });
  return wrongBecause(() => {
    const known = [...reading.materials.values(), ...reading.colours.values()];
    const near = didYouMean(
      name,
      known.map((thing) => thing.name),
    );
    return `${quoted(name)} is not a material in Materials or a colour in Colours.${near}`;
  });
}

function lineG(
  ingredient: Ingredient,
  amount: Exact,
  measure: ColourRow['measure'],
  reading: Reading,
): Result<Exact> {
  if (ingredient.kind === 'soap') {
    if (measure === 'drops') return wrong(`a colour is weighed, not dropped. Use g, ml or parts`);
    if (measure !== 'ml') return answer(amount);
    const density = soapDensity(ingredient.soap);
    return density.ok ? answer(amount.times(density.value)) : density;
  }
  const { material } = ingredient;
  // Parts are by weight, so one part counts as one gram of the recipe.
  return measure === 'parts'
    ? answer(amount)
    : convertNoting(reading, amount, measure, 'g', material);
}

function stockUnitsPerG(
  ingredient: Ingredient,
  measure: ColourRow['measure'],
  reading: Reading,
): Result<Exact> {
  if (ingredient.kind === 'soap') return answer(one);
  const { material } = ingredient;
  if (material.unit === 'each')
    return wrong(`${material.name} is counted in each and can't be melted in.`);
  // Counting drops lets a blank density be assumed, and one bridge must serve the line both ways.
  return measure === 'drops' && benchUnitOf(material.unit) === 'ml'
    ? convert(one.div(material.densityGPerMl ?? one), 'ml', material.unit)
    : convertNoting(reading, one, 'g', material.unit, material);
}

/** Bases first, then blended colours, then what is added; heaviest first; so row order never matters. */
function weighOutOrder(a: RecipeLine, b: RecipeLine): number {
  return (
    rank(a) - rank(b) ||
    b.g.comparedTo(a.g) ||
    compareNames(ingredientName(a.ingredient), ingredientName(b.ingredient))
  );
}

function rank({ ingredient }: RecipeLine): number {
  if (ingredient.kind === 'soap') return 1;
  return ingredient.material.kind === 'base' ? 0 : 2;
}

const ingredientName = (ingredient: Ingredient): string =>
  ingredient.kind === 'soap' ? ingredient.soap.name : ingredient.material.name;
