import { inflateSync } from 'node:zlib';

/** Sizes in bytes, of the header and of one entry of the directory, in either form. */
const woff = { header: 44, entry: 20 } as const;
const sfnt = { header: 12, entry: 16 } as const;

/**
 * The font inside a WOFF file, as OpenType or TrueType; other bytes are given back as they are.
 *
 * The library that sets the documents unpacks such a file table by table in a script, over and over: most of a second
 * for one record. Here each table is unpacked once, by the machine's own zlib.
 * Source: W3C, WOFF File Format 1.0 (2012), sections 4 and 5. Checksums are copied, not tested: the library reads none.
 */
export function unpackedFont(bytes: Uint8Array): Uint8Array {
  const from = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < woff.header || from.getUint32(0) !== 0x774f4646) return bytes;
  const tables = from.getUint16(12);
  const out = new Uint8Array(from.getUint32(16));
  const to = new DataView(out.buffer);
  to.setUint32(0, from.getUint32(4));
  writeSearchFields(to, tables);
  let at = sfnt.header + tables * sfnt.entry;
  for (let i = 0; i < tables; i += 1) {
    const entry = woff.header + i * woff.entry;
    const [tag, offset, packed, length, checksum] = [0, 4, 8, 12, 16].map((o) => from.getUint32(entry + o));
    const table = bytes.subarray(offset!, offset! + packed!);
    const directory = sfnt.header + i * sfnt.entry;
    for (const [place, value] of [tag, checksum, at, length].entries())
      to.setUint32(directory + 4 * place, value!);
    out.set(packed! < length! ? inflateSync(table) : table, at);
    at += (length! + 3) & ~3;
  }
  return out;
}

/** How many tables there are, and the fields that old readers search the directory by. */
function writeSearchFields(to: DataView, tables: number): void {
  const power = Math.floor(Math.log2(tables));
  to.setUint16(4, tables);
  to.setUint16(6, 16 * 2 ** power);
  to.setUint16(8, power);
  to.setUint16(10, 16 * tables - 16 * 2 ** power);
}
