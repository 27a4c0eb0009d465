/** What a line is to the division of its file, and nothing of what it says. */
import { word as firstWord } from "../../grammar/tokens.ts";
import { containers, opening, structural } from "../../grammar/vocabulary.ts";
import { isConflict, linesOf } from "./lines.ts";

/**
 * Whether a line does to the division of its file what it did before an edit, so that all around it is divided as it was.
 * `namesSegment` says that no line above it in its segment has a word: its own is the segment's.
 */
export function sameRole(before: string, after: string, namesSegment: boolean): boolean {
  const [one, other] = [linesOf(before), linesOf(after)];
  if (one.count > 1 || other.count > 1 || before === "" || after === "") return false;
  // Nothing but a line feed may end the line above, if that ends with a carriage return.
  if (after.startsWith("\n") && !before.startsWith("\n")) return false;
  return (
    one.net(0) === other.net(0) &&
    one.closesFirst(0) === other.closesFirst(0) &&
    // How far in a line stands that has nothing on it is not asked.
    (one.indent(0) === other.indent(0) || !one.isSolid(0)) &&
    one.word(0) === other.word(0) &&
    one.isSolid(0) === other.isSolid(0) &&
    one.mayOpen(0) === other.mayOpen(0) &&
    one.opensFirst(0) === other.opensFirst(0) &&
    isConflict(before, 0) === isConflict(after, 0) &&
    before.includes("{") === after.includes("{") &&
    wordOf(before, namesSegment || one.net(0) > 0) === wordOf(after, namesSegment || one.net(0) > 0)
  );
}

/** The first word of a line; of one that opens nothing, only if it is a word that may. */
function wordOf(line: string, isAsked: boolean): string {
  const word = firstWord.exec(line)?.[0] ?? "";
  return isAsked || opening.has(word) || structural.has(word) || containers.has(word) ? word : "";
}
