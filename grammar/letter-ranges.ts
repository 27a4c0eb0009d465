/** Letters of every script as ranges of a character class, for engines that know no properties of signs. */

/** All signs below U+10000; halves of pairs are none. */
const plane = Array.from({ length: 0x10000 }, (_, code) =>
  code >= 0xd800 && code < 0xe000 ? " " : String.fromCharCode(code),
).join("");

const rangesOf = (stretches: RegExp): string =>
  Array.from(
    plane.matchAll(stretches),
    ({ index, 0: { length } }) => `${escaped(index)}-${escaped(index + length - 1)}`,
  ).join("");

const escaped = (code: number): string => `\\u${code.toString(16).padStart(4, "0")}`;

/** The file that holds them: worked out at every start they would cost it some milliseconds. */
export const lettersFile = (): string =>
  [
    "// Written by `npm run generate`. Do not edit.",
    "/** Letters, and the marks that are put on them, below U+10000. */",
    `export const letters = String.raw\`${rangesOf(/\p{L}+/gu)}\`;`,
    `export const marks = String.raw\`${rangesOf(/\p{M}+/gu)}\`;`,
    "",
  ].join("\n");
