/** One, two and three: "a, b and c". */
export const listed = (items: readonly string[], joint: "and" | "or" = "and"): string =>
  items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} ${joint} ${items.at(-1)}`;

/** The same of a long list: so many by name, and how many more. */
export const listedUpTo = (most: number, items: readonly string[]): string =>
  items.length > most ? `${items.slice(0, most).join(", ")} and ${items.length - most} more` : listed(items);

/** How many of something there are: "1 way", "2 ways". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** The same with a capital, as a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** With a capital at its beginning and a stop at its end. */
export function sentence(text: string): string {
  const first = capital(text);
  return /[.?!]$/.test(first) ? first : `${first}.`;
}

/** A text whose words no screen holds, such as a figure of ten thousand digits, with those cut short: a quotation keeps its end. */
export const withShortWords = (text: string): string =>
  text.replace(/\S{81,}/gu, (word) => `${[...word].slice(0, 60).join("")}…${/[”"]?[.,:;?]?$/.exec(word)?.[0] ?? ""}`);

/** Whether a value is one of these words. */
export const isOneOf = <W extends string>(words: readonly W[], value: unknown): value is W =>
  (words as readonly unknown[]).includes(value);
