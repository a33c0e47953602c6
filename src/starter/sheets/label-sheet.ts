import { cell, inputCells, titleCells } from '../cells/answer-cells.ts';
import { answered } from '../blocks/answered.ts';
import {
  at,
  cellOn,
  type Formula,
  named,
  pour,
  unlessBlank,
  unlessFailed,
} from '../cells/formula.ts';
import { listed, moreNote } from '../blocks/listed.ts';
import { countWhere, numberBeside, textBeside } from '../cells/look-up.ts';
import { blank, choose, cutAfter, given, join, over, value } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { designNames } from '../blocks/table-choices.ts';
import { oneCell, widths } from './weigh-sheet.ts';

const NAME = 'Label';
const DESIGN = 3;
const KIND = 4;
const MAKER = 5;
const BATCH = 6;
const GIVEN = 1;
const NET = 7;
const LABEL = 10;
const CHECKS = 19;
const CHECK_LINES = 40;
/** 1 oz, legally 1/16 of 453.59237 g (NIST Handbook 44, appendix C). */
const OUNCE_G = 28.349523125;
/** From a pound on, the label states pounds beside ounces (21 CFR 701.13(j)). */
const POUND_OZ = 16;

/** What a design's label says, and what of it can be checked. */
export function labelSheet(design: string): StarterSheet {
  const asked = at(DESIGN, GIVEN);
  const checks = answered('checks');
  const results = {
    startRow: CHECKS + 1,
    startColumn: 3,
    endRow: CHECKS + CHECK_LINES,
    endColumn: 3,
  };
  const counted = (result: string): Formula =>
    unlessFailed(checks.head, countWhere([checks.column(4), '', value(result)]));
  const there = cellOn(NAME, DESIGN, GIVEN);
  const wrapped = cellOn(NAME, BATCH, GIVEN);
  return {
    name: NAME,
    group: 'answers',
    widths: widths([52, 28, 32, 12, 100]),
    heights: { [LABEL + 3]: 112 },
    cells: [
      ...titleCells(
        NAME,
        'An aid, not an approval: your local rules and a licensed assessor decide what a label must say. Printing prints the label only.',
      ),
      ...inputCells(DESIGN, GIVEN, 'Design', design, 'text'),
      ...inputCells(KIND, GIVEN, 'What it is', 'Soap bar', 'text'),
      ...inputCells(MAKER, GIVEN, 'Maker, address', '', 'text'),
      ...inputCells(BATCH, GIVEN, 'Batch', '', 'text'),
      ...netWeight(asked),
      ...labelBlock(asked),
      cell(CHECKS - 1, 0, 'Checks', 'heading'),
      ...listed({
        row: CHECKS + 1,
        column: 0,
        lines: CHECK_LINES,
        of: checks,
        columns: [
          { header: 'Check', format: 'text', take: 1 },
          { header: 'Value', format: 'fine', take: 2 },
          { header: 'Limit', format: 'text', take: 3 },
          { header: 'Result', format: 'text', take: 4 },
          { header: 'Source', format: 'text', take: 5 },
        ],
        instead: 'Pick a design above.',
      }),
      cell(
        CHECKS - 1,
        1,
        moreNote(checks.beyond(CHECK_LINES), 'put POUR.CHECKS on a sheet of its own.'),
        'note',
      ),
      cell(BATCH, 2, 'Bars of this batch on hand', 'label'),
      cell(BATCH, 3, barsOnHand(at(BATCH, GIVEN), asked), 'answer', 'whole'),
      cell(DESIGN, 2, 'Checks that are over', 'label'),
      cell(DESIGN, 3, counted('over'), 'answer', 'whole'),
      cell(KIND, 2, 'Checks that are unknown', 'label'),
      cell(KIND, 3, counted('unknown'), 'answer', 'whole'),
    ],
    asks: [
      { list: bars, of: unlessBlank(wrapped, '', pour('RECALL', wrapped, named(bookName))) },
      { list: checks, of: unlessBlank(there, '', pour('CHECKS', there, named(bookName))) },
    ],
    dropDowns: [{ range: oneCell(DESIGN, GIVEN), choices: { source: designNames }, strict: false }],
    marks: (['over', 'unknown'] as const).map((result) => ({
      range: { ...results, startColumn: 0, endColumn: 4 },
      formula: `$D${String(CHECKS + 2)}="${result}"`,
      shows: result === 'over' ? ('short' as const) : { fill: '#FFF4DB', color: '#5E4A1E' },
    })),
    landscape: false,
    prints: { startRow: LABEL, startColumn: 0, endRow: LABEL + 5, endColumn: 0 },
  };
}

const bars = answered('batch');

/** How many labels with this batch's number there are bars for. A lot of the same name stands first in RECALL. */
function barsOnHand(batch: Formula, design: Formula): Formula {
  const inLine = (line: number, otherwise: Formula): Formula =>
    choose([bars.at(line, 2), '=', batch], bars.at(line, 6), otherwise);
  const designOf = textBeside(
    batch,
    columnCells('batches', 'batch'),
    columnCells('batches', 'design'),
  );
  const found = unlessBlank(bars.head, '', inLine(1, inLine(2, blank)));
  return unlessBlank(
    batch,
    '',
    choose([designOf, '=', design], found, value('not a batch of this design')),
  );
}

/** Both rounded down, so that no label says more than is in the wrapper. */
function netWeight(asked: Formula): StarterCell[] {
  const g = numberBeside(asked, columnCells('designs', 'design'), columnCells('designs', 'netG'));
  const net = at(NET, GIVEN);
  const [whole, ounces] = [at(NET, 3), at(NET + 1, 3)];
  return [
    cell(NET, 0, 'Net g, as in Bar designs', 'label'),
    cell(NET, GIVEN, choose([unlessZero(g), '=', blank], blank, g), 'answer', 'number'),
    cell(NET, 2, 'g, rounded down', 'label'),
    cell(
      NET,
      3,
      given([net], choose([net, '<', value(10)], cutAfter(1, net), cutAfter(0, net))),
      'answer',
      'number',
    ),
    cell(NET + 1, 2, 'oz, rounded down', 'label'),
    cell(NET + 1, 3, given([net], cutAfter(2, over(net, value(OUNCE_G)))), 'answer', 'number'),
    cell(NET + 1, 0, 'Net weight statement', 'label'),
    cell(
      NET + 1,
      GIVEN,
      given(
        [whole, ounces],
        choose(
          [ounces, '<', value(POUND_OZ)],
          join(value('Net Wt '), ounces, value(' oz ('), whole, value(' g)')),
          value('A pound or more: state pounds and ounces by hand.'),
        ),
      ),
      'answer',
      'text',
    ),
  ];
}

/** A net weight of 0 is one that nobody has filled in. */
const unlessZero = (of: Formula): Formula => ({
  text: `IF(${of.text}=0,"",${of.text})`,
  work: (from) => {
    const found = of.work(from);
    return found === 0 ? '' : found;
  },
});

function labelBlock(asked: Formula): StarterCell[] {
  const ingredients = pour('INGREDIENTS', asked, named(bookName));
  const lines: readonly (readonly [Formula, 'headline' | 'centred' | 'wrapped'])[] = [
    [asked, 'headline'],
    [at(KIND, GIVEN), 'centred'],
    [at(NET + 1, GIVEN), 'centred'],
    [unlessBlank(asked, '', join(value('Ingredients: '), ingredients)), 'wrapped'],
    [at(MAKER, GIVEN), 'centred'],
    [
      choose([at(BATCH, GIVEN), '=', blank], blank, join(value('Batch '), at(BATCH, GIVEN))),
      'centred',
    ],
  ];
  return [
    cell(LABEL - 1, 0, 'The label', 'heading'),
    ...lines.map(([holds, role], down) =>
      cell(LABEL + down, 0, shownBlank(holds), role, 'general'),
    ),
  ];
}

/** A reference to an empty cell would show 0. */
const shownBlank = (holds: Formula): Formula =>
  holds.text.includes('(') ? holds : { ...holds, text: `${holds.text}&""` };
