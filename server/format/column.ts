/**
 * The column in which the arguments of a block's lines begin, counted from the beginning of their word. It is the same
 * in every block and follows from no neighbour, so that a line that comes, goes or changes moves no other: one changed
 * fact is one changed line. What stands before it has room for twelve signs; a longer word reaches beyond for itself.
 */
const argumentColumn = 13;

/** A line without its indentation: its word, with the name that belongs to it, and its arguments in their column. */
export const inColumn = ({ head, args }: { readonly head: string; readonly args: string }): string =>
  args === "" ? head : `${head.padEnd(argumentColumn - 1)} ${args}`;

/** The same for a line that is written already, whose word has no name of its own: `Zs 0.4 Ω`. */
export function alignedLine(line: string): string {
  const [, head = line, args = ""] = /^(\S+)[ \t]+(.*)$/s.exec(line) ?? [];
  return inColumn({ head, args });
}
