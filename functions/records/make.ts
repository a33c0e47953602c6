import type { Argument, Records } from './record.ts';
import { book, design } from './shared.ts';

/** What a batch is asked by, or all batches of one sitting. */
const batch = {
  design: {
    kind: 'name or names',
    help: 'Name of the design, as in Designs; or a column of several that are made in one sitting.',
  },
  bars: {
    kind: 'count or counts',
    help: 'Good bars wanted; 12 if blank. Beside several designs a column as high as theirs.',
    ifBlank: 12,
  },
  book,
  useLeftovers: {
    kind: 'yes/no',
    help: 'TRUE melts leftover soap first and lays spare tiles first; FALSE if blank.',
    optional: true,
    ifBlank: false,
  },
} as const satisfies Readonly<Record<string, Argument>>;

const meltColumns = [
  'Step',
  'Colour',
  'Fills',
  'Needed g',
  'Melt g',
  'Ingredient',
  'Amount',
  'Unit',
  'Spare tiles',
  'Leftover g',
] as const;

const needColumns = ['Material', 'Amount', 'Unit', 'On hand', 'Short'] as const;

export const makeRecords = {
  MELTSHEET: {
    help: 'What to weigh out for a batch, colour by colour in pouring order, one row for each ingredient.',
    takes: batch,
    answers: { columns: meltColumns },
    restsOn: ['items', 'day'],
  },
  MATERIALS: {
    help: 'Materials that a batch takes from stock, what is on hand today, and what is short.',
    takes: batch,
    answers: { columns: needColumns },
    restsOn: ['items', 'day'],
  },
  WEIGHOUT: {
    help: 'MELTSHEET in amounts that a scale and a dropper can do; recording the pour takes just these.',
    takes: batch,
    answers: { columns: [...meltColumns, 'Mind'] },
    restsOn: ['items', 'day'],
  },
  TAKEOUT: {
    help: 'MATERIALS as WEIGHOUT weighs it out: what recording the pour will take from stock.',
    takes: batch,
    answers: { columns: needColumns },
    restsOn: ['items', 'day'],
  },
  CANMAKE: {
    help: "The most whole good bars of a design that today's stock allows.",
    takes: { design, book },
    answers: 'number',
    restsOn: ['items', 'day'],
  },
  BASEPERMOLD: {
    help: 'Grams of soap for fills of a mold, with the soap scraped off; with a colour, grams of base in it.',
    takes: {
      mold: { kind: 'name', help: 'Name of the mold, as in Molds.' },
      book,
      fills: { kind: 'number', help: 'How many fills; 1 if blank.', optional: true, ifBlank: 1 },
      colour: {
        kind: 'name',
        help: 'A colour, to get only the grams of base in that soap.',
        optional: true,
      },
    },
    answers: 'number',
    restsOn: ['items'],
  },
  MOLDFILL: {
    help: 'What one fill of a mold holds, by weighing some of them: the mean, how far single fills lie apart, and how far the mean may be off. For a mean sure to a gram (19 times of 20, common practice) weigh (2 × SD g)² fills in all; one alone has no SD: weigh another.',
    takes: {
      weights: { kind: 'range', help: 'The weight of each fill in g, a cell for each.' },
      emptyG: {
        kind: 'number',
        help: 'What the empty mold weighs, in g; 0 if blank.',
        optional: true,
        ifBlank: 0,
      },
      densityOfWhatWasWeighed: {
        kind: 'count',
        help: 'In g per ml; 1 if blank. Water of 20 °C has 0.9982.',
        optional: true,
        ifBlank: 1,
      },
      densityOfSoap: {
        kind: 'count',
        help: 'In g per ml; 1 if blank. Where soap was weighed give the same for both.',
        optional: true,
        ifBlank: 1,
      },
    },
    answers: { columns: ['Fill g', 'SD g', 'Uncertainty g', 'Trials'] },
    restsOn: [],
  },
  TILECOUNT: {
    help: 'Counts the tiles of each colour in a mosaic pattern, most first; with a colour, its number of tiles.',
    takes: {
      pattern: {
        kind: 'names',
        help: "Cells with a colour's name for each tile; blank cells are no tile.",
      },
      colour: { kind: 'name', help: 'A colour, to get its count alone.', optional: true },
    },
    answers: { columns: ['Colour', 'Tiles'], orNumber: true },
    restsOn: [],
  },
} as const satisfies Records;
