/** Text of a stranger, wherever a schedule holds text: what would steer a terminal, Markdown or a page. */
import fc from "fast-check";
import { loft } from "./cursor.ts";

const pieces = [
  "\u001b]0;title\u0007",
  "\u001b[31m",
  "\u009b2J",
  "\u0008\u007f\u0000",
  "\u202e\u2066\u200f",
  "![x](https://nowhere.invalid/p.png)",
  "[x](command:run)",
  "<img src=x onerror=y>",
  "</title><script>",
  "```",
  "`*_~|#",
  "**bold**",
  "&amp;",
  "\\",
  '"',
  "\ud800",
  "Loft",
  " ",
];

export const hostileText = fc
  .array(fc.constantFrom(...pieces), { minLength: 1, maxLength: 6 })
  .map((some) => some.join(""));

const quoted = (text: string): string => `"${text.replace(/["\\]/g, "\\$&")}"`;

/** A sound schedule in which all that may be said freely is said by the stranger. */
export const hostileSchedule = (text: string, schedule = loft): string =>
  schedule
    .replace(/"[^"\n]*"/g, () => quoted(text))
    .replace(/(\n +)serves {2}/, (line, indent) =>
      [
        `${indent}note ${quoted(text)}`,
        `${indent}query ${quoted(text)}`,
        `${indent}departure loop/zs-over-limit ${quoted(text)}`,
        line,
      ].join(""),
    );

/** Signs that a screen obeys, besides line ends and tabs. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the very signs that are looked for
export const obeyed = /[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;
