/**
 * The floor: one pass over all cells that mixes every character and number into two lanes of 32 bits,
 * row by row and column by column, and does nothing else. A copy of how BOOK once made its handle.
 */
export function hashingPass(ranges) {
  const total = { high: 0, low: 0 };
  const row = { high: 0, low: 0 };
  for (const range of ranges) {
    for (const cells of range) {
      row.high = 0x9e3779b1;
      row.low = 0x85ebca77;
      for (const cell of cells) mixCell(row, cell);
      total.high = (total.high + finish(row.high ^ row.low)) | 0;
      total.low = (total.low + finish(row.low)) | 0;
    }
  }
  return total;
}

const bits = new Float64Array(1);
const words = new Uint32Array(bits.buffer);

function mixCell(row, cell) {
  if (typeof cell === 'number') {
    bits[0] = cell;
    mix(row, words[0] ^ 0x6e);
    mix(row, words[1]);
  } else {
    for (let i = 0; i < cell.length; i += 1) mix(row, cell.charCodeAt(i));
    mix(row, cell.length ^ 0x10000);
  }
}

function mix(row, word) {
  row.high = Math.imul(row.high ^ word, 0x01000193);
  row.low = Math.imul((row.low ^ word) + 0x7ed55d16, 0x85ebca6b) ^ (row.low >>> 15);
}

function finish(lane) {
  let mixed = Math.imul(lane ^ (lane >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}
