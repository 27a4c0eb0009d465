/** Line ends, the last line's and the byte order mark: settled for the whole text before its lines are compared. */

/** A text as it was decoded: without its byte order mark. */
interface Version {
  readonly text: string;
  readonly bom: boolean;
}

export interface Texts {
  readonly base: Version;
  readonly ours: Version;
  readonly theirs: Version;
}

interface Evened {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
  readonly lineEnd: string;
  /** Whether the last line has a line end. */
  readonly closed: boolean;
  readonly bom: boolean;
}

/** All three with the same usual line end, and one behind the last line. Lines that end otherwise stay as they are. */
export function evened({ base, ours, theirs }: Texts): Evened {
  const was = base.text === "" ? ours : base;
  const lineEnd = oneOf(usualEnd(was.text), usualEnd(ours.text), usualEnd(theirs.text));
  const text = (version: Version): string =>
    closedWith(lineEnd, replaced(version.text, usualEnd(version.text), lineEnd));
  return {
    base: text(base),
    ours: text(ours),
    theirs: text(theirs),
    lineEnd,
    closed: oneOf(isClosed(was.text), isClosed(ours.text), isClosed(theirs.text)),
    bom: oneOf(was.bom, ours.bom, theirs.bom),
  };
}

/** What the side that changed it says. */
const oneOf = <T>(base: T, ours: T, theirs: T): T => (ours === base ? theirs : ours);

const ends = ["\r\n", "\n", "\r"] as const;

/** The line end most lines have. */
function usualEnd(text: string): string {
  const found = text.match(/\r\n|\n|\r/g) ?? [];
  const count = (end: string) => found.filter((one) => one === end).length;
  if (found.length === 0) return "\n";
  return ends.toSorted((a, b) => count(b) - count(a))[0] ?? "\n";
}

const replaced = (text: string, from: string, to: string): string =>
  from === to ? text : text.replace(/\r\n|\n|\r/g, (end) => (end === from ? to : end));

const isClosed = (text: string): boolean => text === "" || /[\r\n]$/.test(text);

const closedWith = (end: string, text: string): string => (isClosed(text) ? text : text + end);
