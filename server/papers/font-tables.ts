/**
 * A typeface without its tables for ligatures and kerning: figures and short words need neither, and reading them takes
 * longer than setting a page.
 */
const dropped = new Set(["GSUB", "GPOS", "GDEF", "kern", "FFTM", "fpgm", "prep", "cvt ", "gasp"]);

/** An OpenType file whose directory no longer lists them. */
export function plainFont(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entries = Array.from({ length: view.getUint16(4) }, (_, at) => {
    const start = 12 + 16 * at;
    const tag = String.fromCharCode(...bytes.subarray(start, start + 4));
    return {
      tag,
      head: bytes.subarray(start, start + 8),
      offset: view.getUint32(start + 8),
      length: view.getUint32(start + 12),
    };
  }).filter(({ tag }) => !dropped.has(tag));
  const aligned = (length: number): number => (length + 3) & ~3;
  const total = entries.reduce((sum, { length }) => sum + aligned(length), 12 + 16 * entries.length);
  const out = new Uint8Array(total);
  const written = new DataView(out.buffer);
  out.set(bytes.subarray(0, 4));
  written.setUint16(4, entries.length);
  let at = 12 + 16 * entries.length;
  entries.forEach(({ head, offset, length }, index) => {
    const start = 12 + 16 * index;
    out.set(head, start);
    written.setUint32(start + 8, at);
    written.setUint32(start + 12, length);
    out.set(bytes.subarray(offset, offset + length), at);
    at += aligned(length);
  });
  return out;
}
