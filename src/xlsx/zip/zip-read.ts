import { crc32, inflate } from '#deflate';
import {
  MAX_FILE_BYTES,
  MAX_PARTS,
  MAX_PART_BYTES,
  MAX_RATIO,
  MAX_TOTAL_BYTES,
  RATIO_MATTERS_BYTES,
} from '../limits.ts';
import { Refusal } from '../refusal.ts';

/** One file inside a zip, still packed, with what its directory entry says. */
export interface ZipEntry {
  readonly name: string;
  readonly method: 0 | 8;
  readonly crc: number;
  readonly size: number;
  readonly packed: Uint8Array;
  readonly dosTime: number;
  readonly dosDate: number;
}

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;

/** Lists a zip's entries in their order, refusing what no honest workbook holds. */
export function readZip(bytes: Uint8Array): readonly ZipEntry[] {
  refuseOtherFormats(bytes);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  const count = view.getUint16(end + 10, true);
  const start = view.getUint32(end + 16, true);
  if (count === 0xffff || start === 0xffffffff || count > MAX_PARTS) {
    throw new Refusal(`This file claims more than ${MAX_PARTS} parts, so it was not opened.`);
  }
  const entries: ZipEntry[] = [];
  const seen = new Set<string>();
  let total = 0;
  for (let at = start, index = 0; index < count; index += 1) {
    const { entry, next } = readEntry(bytes, view, at, end);
    const key = entry.name.toLowerCase();
    if (seen.has(key)) throw new Refusal(`This file holds the part "${entry.name}" twice.`);
    seen.add(key);
    total += entry.size;
    if (total > MAX_TOTAL_BYTES) throw tooBig();
    entries.push(entry);
    at = next;
  }
  return entries;
}

/** Unpacks one entry; never allocates more than the entry declared, and checks its checksum. */
export function unpack(entry: ZipEntry): Uint8Array {
  let bytes: Uint8Array;
  try {
    bytes = entry.method === 0 ? entry.packed : inflate(entry.packed, entry.size);
  } catch {
    throw new Refusal(`The part "${entry.name}" is damaged or larger than it claims.`);
  }
  if (bytes.length !== entry.size || crc32(bytes) !== entry.crc) {
    throw new Refusal(`The part "${entry.name}" is damaged: its checksum does not match.`);
  }
  return bytes;
}

function refuseOtherFormats(bytes: Uint8Array): void {
  if (bytes.length > MAX_FILE_BYTES) throw tooBig();
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf && bytes[2] === 0x11 && bytes[3] === 0xe0) {
    throw new Refusal(
      'This is an old .xls file or one locked with a password. Open it in Excel or LibreOffice and save it as .xlsx without a password.',
    );
  }
  if (bytes.length < 22 || bytes[0] !== 0x50 || bytes[1] !== 0x4b) throw notAWorkbook();
}

function findEnd(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - 22 - 0xffff);
  for (let at = view.byteLength - 22; at >= lowest; at -= 1) {
    if (view.getUint32(at, true) === END) return at;
  }
  throw notAWorkbook();
}

function readEntry(bytes: Uint8Array, view: DataView, at: number, end: number) {
  if (at + 46 > end || view.getUint32(at, true) !== CENTRAL) throw damaged();
  const flags = view.getUint16(at + 8, true);
  const method = view.getUint16(at + 10, true);
  const packedSize = view.getUint32(at + 20, true);
  const size = view.getUint32(at + 24, true);
  const nameLength = view.getUint16(at + 28, true);
  const next = at + 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  if (next > end) throw damaged();
  const name = decodeName(bytes.subarray(at + 46, at + 46 + nameLength));
  if (flags & 1) throw new Refusal('This file is locked with a password. Save it without one.');
  if (method !== 0 && method !== 8) throw damaged();
  if (size > MAX_PART_BYTES || packedSize === 0xffffffff) throw tooBig();
  if (size > RATIO_MATTERS_BYTES && size > packedSize * MAX_RATIO) throw tooBig();
  const packed = packedBytes(bytes, view, view.getUint32(at + 42, true), packedSize, end);
  const dosTime = view.getUint16(at + 12, true);
  const dosDate = view.getUint16(at + 14, true);
  const crc = view.getUint32(at + 16, true);
  const entry: ZipEntry = { name, method, crc, size, packed, dosTime, dosDate };
  return { entry, next };
}

function packedBytes(bytes: Uint8Array, view: DataView, local: number, size: number, end: number) {
  if (local + 30 > end || view.getUint32(local, true) !== LOCAL) throw damaged();
  const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  if (start + size > end) throw damaged();
  return bytes.subarray(start, start + size);
}

function decodeName(bytes: Uint8Array): string {
  const name = new TextDecoder('utf-8').decode(bytes);
  const steps = name.split('/');
  const tricky =
    name === '' ||
    name.startsWith('/') ||
    // eslint-disable-next-line no-control-regex -- a control character in a path is the trick
    /[\\:\u0000-\u001f\u007f\ufffd]/.test(name) ||
    steps.some((step) => step === '..' || step === '.');
  if (tricky)
    throw new Refusal('This file holds a part with an unsafe path, so it was not opened.');
  return name;
}

function tooBig(): Refusal {
  return new Refusal('This file unpacks to far more than a workbook should, so it was not opened.');
}

function damaged(): Refusal {
  return new Refusal('This file is damaged: its list of parts cannot be read.');
}

function notAWorkbook(): Refusal {
  return new Refusal('This is not an .xlsx workbook.');
}
