/** The text of a file without its byte order mark, so that positions are those an editor shows. */
export type Text = { readonly text: string; readonly bom: boolean } | { readonly failure: string };

/** A schedule of a thousand ways is under half a megabyte. What is larger than this was not written by a person. */
export const ceiling = 8_000_000;

/** Reads bytes as UTF-8, or says why they are no text. Nothing is guessed or replaced: a lost sign could be a figure. */
export function decode(bytes: Uint8Array): Text {
  if (bytes.length > ceiling) return { failure: tooLarge(bytes.length) };
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    return { failure: "it is UTF-16 text; save it as UTF-8." };
  }
  const whole = decodeStart(bytes, bytes.length, false);
  if (whole === undefined) return { failure: notUtf8(bytes) };
  const nul = whole.indexOf("\0");
  if (nul >= 0) return { failure: `it is no text file: line ${lineOf(whole.slice(0, nul))} holds a NUL byte.` };
  const bom = whole.startsWith("\ufeff");
  return { text: bom ? whole.slice(1) : whole, bom };
}

export const tooLarge = (size: number): string =>
  `it is larger than ${ceiling / 1_000_000} MB (${(size / 1_000_000).toFixed(1)} MB), the most that is read of one file.`;

const decoder = () => new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });

/** For bytes that are all there are: it keeps nothing from one to the next. */
const strict = decoder();

/** `more`: a sign that is cut off at the end does not count against the bytes. */
function decodeStart(bytes: Uint8Array, length: number, more: boolean): string | undefined {
  try {
    const part = length === bytes.length ? bytes : bytes.subarray(0, length);
    return more ? decoder().decode(part, { stream: true }) : strict.decode(part);
  } catch {
    return undefined;
  }
}

function notUtf8(bytes: Uint8Array): string {
  // The first length that cannot be decoded ends with, or just after, the first bad byte.
  let good = 0;
  let bad = bytes.length + 1;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (decodeStart(bytes, middle, true) === undefined) bad = middle;
    else good = middle;
  }
  const before = decodeStart(bytes, good, true) ?? "";
  const at = new TextEncoder().encode(before).length;
  const byte = (bytes[at] ?? 0).toString(16).toUpperCase().padStart(2, "0");
  const column = before.length - Math.max(before.lastIndexOf("\n"), before.lastIndexOf("\r"));
  return `it is not UTF-8 text: the first bad byte (${byte}) stands at line ${lineOf(before)}, column ${column}.`;
}

const lineOf = (before: string): number => before.split(/\r\n|\r|\n/).length;
