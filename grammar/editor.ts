import { letter } from "./tokens.ts";

/** What an editor needs to know of the language besides its colours. */

/** Words as the trade has them are one word to the editor: R1+R2, L-N, N/A, 411.3.3, 7671:2018+A2:2022. */
const wordPattern = { pattern: `[${letter}\\w°²½×]+(?:[+\\-/.:][${letter}\\w]+)*`, flags: "u" };

const text = '"(?:[^"\\\\]|\\\\.)*"';

export function languageConfiguration(): string {
  const configuration = {
    comments: { lineComment: "#" },
    brackets: [["{", "}"]],
    autoClosingPairs: [
      { open: "{", close: "}", notIn: ["string", "comment"] },
      { open: '"', close: '"', notIn: ["string", "comment"] },
    ],
    surroundingPairs: [
      ["{", "}"],
      ['"', '"'],
    ],
    wordPattern,
    indentationRules: {
      increaseIndentPattern: `^(?:[^"#{}]|${text})*\\{[^{}"#]*(?:#.*)?$`,
      decreaseIndentPattern: "^\\s*\\}",
    },
  };
  return `${JSON.stringify(configuration, undefined, 2)}\n`;
}
