import { loadFunctions } from './functions.js';

/**
 * `npm run bench -- plan`: the calendar of 12 designs over 90 days, of 15 to 120 lines, on workshops that are
 * less or more busy. Each is a book not met before, so nothing is kept from the one before; processor time, since
 * other work on the machine counts in the clock's. Beside it stand the minutes of setup, and what no plan can do
 * without: where the two are one, the plan is a best one, and PLANNOTES says nothing of it.
 */
const GOAL_MS = 300;
const WORKSHOPS = 7;
const DESIGNS = 12;
const DAYS = 90;
const FIRST_DAY = 45_000;

const functions = loadFunctions();
const call = (id, ...cells) => functions.get(id)(...cells);

/** Dice of our own, so that every run plans the same workshops. */
function diceOf(seed) {
  let state = seed * 7919 + 1;
  return (most) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % most;
  };
}

/** A workshop's plan takes about a share of all its minutes; tiles of five colours and two trays are shared. */
function workshop(seed, lines, busy) {
  const dice = diceOf(seed);
  const setups = Array.from({ length: DESIGNS }, () => [20, 30, 45, 60][dice(4)]);
  const labour = Array.from({ length: DESIGNS }, () => 5 + dice(9));
  const name = (at) => `Design ${at + 1}`;
  const bars = Math.max(1, Math.round((busy * DAYS * (6 / 7) * 240) / lines / 12));
  return call(
    'BOOK',
    [
      ['Setting', 'Value'],
      ['Minutes per day', 240],
      ['Rest days', 'Sun'],
    ],
    [
      ['Material', 'Kind', 'Unit'],
      ['Clear base', 'base', 'g'],
      ['Tint', 'colourant', 'g'],
    ],
    [
      ['Mold', 'Makes', 'Cavities', 'Fill g', 'Sections', 'Set minutes'],
      ['Tray', 'tiles', 48, 200, 4, 40],
      ['Small tray', 'tiles', 24, 60, 6, 30],
      ['Bar mold', 'bars', 4, 0, 4, 60],
    ],
    [
      ['Colour', 'Ingredient', 'Amount', 'Measure'],
      ...Array.from({ length: 5 }, (_, at) => [
        [`Colour ${at}`, 'Clear base', 100 + at, 'g'],
        [`Colour ${at}`, 'Tint', 1, 'g'],
      ]).flat(),
    ],
    [
      ['Design', 'Bar mold', 'Labour minutes', 'Setup minutes', 'Yield %', 'Hands-off hours'],
      ...setups.map((setup, at) => [
        name(at),
        'Bar mold',
        labour[at],
        setup,
        at % 2 ? 95 : 100,
        20,
      ]),
    ],
    [
      ['Design', 'Layer', 'Part', 'Item', 'Mold', 'Per bar', 'Per'],
      ...setups.flatMap((_, at) => [
        [name(at), '1', 'tiles', `Colour ${at % 5}`, 'Tray', 12 + (at % 7), 'each'],
        [name(at), '2', 'tiles', `Colour ${(at + 2) % 5}`, 'Small tray', 6, 'each'],
        [name(at), '3', 'pour', 'Clear base', '', 50, 'g'],
      ]),
    ],
    [
      ['Plan line', 'Design', 'Bars', 'Ready by'],
      ...Array.from({ length: lines }, (_, at) => [
        `P-${at + 1}`,
        name(at % DESIGNS),
        Math.max(1, Math.round(bars * (0.4 + dice(120) / 100))),
        FIRST_DAY + Math.floor(DAYS * (0.1 + (0.9 * (1 + dice(12))) / 12)),
      ]),
    ],
  );
}

/** Processor milliseconds of some work, and its answer. */
function measured(work) {
  const before = process.cpuUsage();
  const answer = work();
  const { user, system } = process.cpuUsage(before);
  return [(user + system) / 1000, answer];
}

const number = (text) => Number(/fewer than (\d+)/u.exec(text)?.[1]);

console.log(
  `${DESIGNS} designs, ${DAYS} days, ${WORKSHOPS} workshops each; processor ms, goal ${GOAL_MS}`,
);
for (const busy of [0.3, 0.6, 0.9]) {
  for (const lines of [15, 30, 60, 120]) {
    const times = [];
    let [pours, best, without] = [0, 0, 0];
    const gaps = [];
    for (let seed = 1; seed <= WORKSHOPS; seed += 1) {
      const book = workshop(seed, lines, busy);
      const [ms, spill] = measured(() => call('CALENDAR', book, FIRST_DAY));
      times.push(ms);
      pours += spill.filter(([, task]) => task === 'Pour').length;
      const notes = call('PLANNOTES', book, FIRST_DAY).filter(([about]) => about === 'Calendar');
      if (spill.some(([, task]) => task.includes('does not fit'))) without += 1;
      if (notes.length === 0) best += 1;
      for (const [, note] of notes) {
        const minutes = Number(/takes (\d+)/u.exec(note)?.[1]);
        if (minutes > 0) gaps.push((minutes / number(note) - 1) * 100);
      }
    }
    const sorted = [...times].sort((a, b) => a - b);
    console.log(
      `  ${busy * 100} % busy, ${String(lines).padStart(3)} lines: ${sorted[0].toFixed(0)} to ${sorted.at(-1).toFixed(0)} ms, ` +
        `middle ${sorted[WORKSHOPS >> 1].toFixed(0)}; ${(pours / WORKSHOPS).toFixed(1)} pours; known to be best ${best} of ${WORKSHOPS}` +
        (gaps.length > 0 ? `, others at most ${Math.max(...gaps).toFixed(1)} % off` : '') +
        (without > 0 ? `; ${without} with bars that find no day` : ''),
    );
  }
}
