/** What the editor shows of a way: the status item alarms about nothing that is held back while its line is written. */

interface Found {
  readonly check: string;
  readonly mark: { readonly line: number };
}

interface Shown {
  readonly code?: string | number | { readonly value: string | number } | undefined;
  readonly range: { readonly start: { readonly line: number } };
}

/** Those of the findings that stand among the marks of the text. */
export function shownOf<T extends Found>(findings: readonly T[], marks: readonly Shown[]): T[] {
  const keys = new Set(marks.map(({ code, range }) => `${checkOf(code)} ${range.start.line}`));
  return findings.filter(({ check, mark }) => keys.has(`${check} ${mark.line}`));
}

/** The check that a mark is of. */
export const checkOf = (code: Shown["code"]): string =>
  code === undefined ? "" : String(typeof code === "object" ? code.value : code);
