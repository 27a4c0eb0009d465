/** Breaks a text at blanks into lines of at most so many signs. A word that is longer itself is cut. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  const put = (word: string): void => {
    if (line === "") line = word;
    else if (line.length + 1 + word.length <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  };
  for (const word of text.split(blanks)) {
    if (word === "") continue;
    for (let at = 0; at < word.length; at += width) put(word.slice(at, at + width));
  }
  return [...lines, line];
}

/** How long the longest part of a text is that does not break. */
export const longestWord = (text: string): number => Math.max(0, ...text.split(blanks).map((word) => word.length));

/** The same text with a blank that does not break between a figure, or a line to write one on, and its unit. */
export const unbroken = (text: string): string => text.replace(beforeUnit, "$1\u00a0");

/** A figure is not torn from its unit, nor a relation from its sides at the one blank that binds them. */
const units = "(?:Ω|MΩ|kΩ|mΩ|A|kA|mA|V|m|mm²|m²|mm|s|ms|°C|%|kW|W|IΔn)(?![\\p{L}\\d])";
const blanks = new RegExp(`[ \\t\\r\\n]+(?!${units})`, "u");
const beforeUnit = new RegExp(`(\\d|×|__)[ \\t\\r\\n]+(?=${units})`, "gu");
