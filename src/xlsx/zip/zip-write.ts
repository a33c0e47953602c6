import { crc32, deflate } from '#deflate';
import type { ZipEntry } from './zip-read.ts';

/** Packs one part. Dates are fixed (1 January 1980) so that the same content gives the same bytes. */
export function pack(name: string, content: Uint8Array): ZipEntry {
  return {
    name,
    method: 8,
    crc: crc32(content),
    size: content.length,
    packed: deflate(content),
    dosTime: 0,
    dosDate: 0x21,
  };
}

/** Puts entries together as a zip; entries read from another zip keep their packed bytes. */
export function writeZip(entries: readonly ZipEntry[]): Uint8Array {
  const pieces: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  for (const entry of entries) {
    const name = new TextEncoder().encode(entry.name);
    directory.push(centralHeader(entry, name, at), name);
    const local = localHeader(entry, name);
    pieces.push(local, name, entry.packed);
    at += local.length + name.length + entry.packed.length;
  }
  const directorySize = sizeOf(directory);
  return join([...pieces, ...directory, endRecord(entries.length, directorySize, at)]);
}

/** The fields that the local and the central header share, in their common order. */
function commonFields(view: DataView, at: number, entry: ZipEntry, name: Uint8Array): void {
  view.setUint16(at, 20, true);
  view.setUint16(at + 2, 0x0800, true); // names are UTF-8
  view.setUint16(at + 4, entry.method, true);
  view.setUint16(at + 6, entry.dosTime, true);
  view.setUint16(at + 8, entry.dosDate, true);
  view.setUint32(at + 10, entry.crc, true);
  view.setUint32(at + 14, entry.packed.length, true);
  view.setUint32(at + 18, entry.size, true);
  view.setUint16(at + 22, name.length, true);
}

function localHeader(entry: ZipEntry, name: Uint8Array): Uint8Array {
  const view = new DataView(new ArrayBuffer(30));
  view.setUint32(0, 0x04034b50, true);
  commonFields(view, 4, entry, name);
  return new Uint8Array(view.buffer);
}

function centralHeader(entry: ZipEntry, name: Uint8Array, offset: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(46));
  view.setUint32(0, 0x02014b50, true);
  view.setUint16(4, 20, true);
  commonFields(view, 6, entry, name);
  view.setUint32(42, offset, true);
  return new Uint8Array(view.buffer);
}

function endRecord(count: number, directorySize: number, directoryStart: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(22));
  view.setUint32(0, 0x06054b50, true);
  view.setUint16(8, count, true);
  view.setUint16(10, count, true);
  view.setUint32(12, directorySize, true);
  view.setUint32(16, directoryStart, true);
  return new Uint8Array(view.buffer);
}

function sizeOf(pieces: readonly Uint8Array[]): number {
  return pieces.reduce((sum, piece) => sum + piece.length, 0);
}

function join(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(sizeOf(pieces));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
