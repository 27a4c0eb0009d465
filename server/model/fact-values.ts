/** What a line of any word says under the name of an argument. Whoever knows the word reads its typed arguments. */
import type { AnyValue, Fact, Val } from "./values.ts";

type Said = Pick<Fact, "args">;

const isList = (value: AnyValue | readonly AnyValue[]): value is readonly AnyValue[] => Array.isArray(value);

/** One value, several or none, as a list. */
export const asList = (value: AnyValue | readonly AnyValue[] | undefined): readonly AnyValue[] =>
  value === undefined ? [] : isList(value) ? value : [value];

/** Each value of an argument, which may be one, several or none. */
export const valuesAt = (fact: Said | undefined, name: string): readonly AnyValue[] => asList(fact?.args[name]);

/** All values of a line. */
export const valuesOf = ({ args }: Said): readonly AnyValue[] => Object.values(args).flatMap(asList);

/** The value of an argument that takes one. */
export const valueAt = (fact: Said | undefined, name: string): AnyValue | undefined => {
  const value = fact?.args[name];
  return value === undefined || isList(value) ? undefined : value;
};

/** Whether it is a word, a name or a text. */
export const isWord = (value: AnyValue): value is Val<string> => "value" in value && typeof value.value === "string";

/** A word, a name or a text with its place. */
export const writtenAt = (fact: Said | undefined, name: string): Val<string> | undefined => {
  const value = valueAt(fact, name);
  return value && isWord(value) ? value : undefined;
};

/** A word, a name or a text. */
export const wordAt = (fact: Said | undefined, name: string): string | undefined => writtenAt(fact, name)?.value;

/** Words, names or texts with their places. */
export const allWrittenAt = (fact: Said | undefined, name: string): readonly Val<string>[] =>
  valuesAt(fact, name).filter(isWord);

/** The number of a figure or a count. */
export const numberAt = (fact: Said | undefined, name: string): number | undefined => {
  const value = valueAt(fact, name);
  return value && "value" in value && typeof value.value === "number" ? value.value : undefined;
};

/** A word or a number, as it tells two lines apart. */
export const keyAt = (fact: Said, name: string): string => `${wordAt(fact, name) ?? numberAt(fact, name) ?? ""}`;
