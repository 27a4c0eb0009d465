/** Mutants that no test can kill, each with the reason: what they change makes no difference to anybody. */
interface Kept {
  readonly file: string;
  /** The line as it stands, without its indentation. */
  readonly line: string;
  readonly by: string;
  readonly reason: string;
}

const kept: readonly Kept[] = [];

export const reasonFor = (file: string, line: string, by: string): string | undefined =>
  kept.find((one) => one.file === file && one.line === line && one.by === by)?.reason;
