import { isToken, lex } from "../../grammar/lexer.ts";
import { absences, corrections, provenances } from "../../grammar/vocabulary.ts";
import type { Spot } from "../rules/frame/rule.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import type { Cursor } from "./cursor.ts";
import { definedNames, type Named, nameAt, occurrences, spotOf } from "./names.ts";

type Renaming = { readonly spots: readonly Spot[] } | { readonly refused: string };

/** The name that would be renamed. */
export function renameable(snapshot: Snapshot, cursor: Cursor): Named | undefined {
  const named = nameAt(snapshot, cursor);
  return named && !named.builtin ? named : undefined;
}

/** Every place a name stands, or why it cannot have the new one: a renamed schedule states what it stated before. */
export function rename(snapshot: Snapshot, cursor: Cursor, newName: string): Renaming {
  const named = renameable(snapshot, cursor);
  if (!named) return { refused: "There is no name here." };
  if (!isName(newName)) return { refused: `“${newName}” cannot be a name: letters, digits, - and . without blanks.` };
  if (newName === "supply" || [provenances, absences, corrections].some((words) => Object.hasOwn(words, newName))) {
    return { refused: `“${newName}” has a meaning of its own.` };
  }
  const taken = definedNames(snapshot, named.names, named.board, named.way);
  if (taken.some(({ name }) => name.value === newName)) return { refused: `“${newName}” is taken already.` };
  return { spots: occurrences(snapshot, named).map(spotOf) };
}

function isName(text: string): boolean {
  const { tokens, comments } = lex(text);
  const [only, ...others] = tokens;
  if (!only || others.length > 0 || comments.length > 0 || only.image !== text) return false;
  return isToken(only, "Word") || isToken(only, "NumberWord") || (isToken(only, "Number") && /^\d/.test(text));
}
