/** Commands and options as somebody guesses them who has not read what there is: other words altogether, and no slips. */

/** What is written instead, behind `wayfile`. */
const commands: Readonly<Record<string, string>> = {
  lint: "check",
  validate: "check",
  verify: "check",
  test: "check",
  audit: "check",
  format: "fmt",
  tidy: "fmt",
  print: "schedule",
  table: "schedule",
  export: "schedule",
  pdf: "schedule --format pdf",
  csv: "schedule --format csv",
  certificate: "inspection",
  report: "inspection",
  eic: "inspection",
  eicr: "inspection",
  diff: "compare",
  import: "enter",
  readings: "enter",
  fill: "worksheet --fill",
  tests: "worksheet",
  calc: "working",
  calculate: "working",
  calculation: "working",
  calculations: "working",
  show: "summary",
  view: "summary",
  status: "summary",
  design: "size",
  select: "size",
  list: "register",
  overview: "register",
  log: "history",
  blame: "history",
  config: "settings",
  rules: "explain",
  docs: "explain",
  lsp: "serve",
  version: "--version",
};

/** An option with its value, the likeliest first: the first whose command has it is meant. */
const options: Readonly<Record<string, readonly string[]>> = {
  json: ["--format json"],
  sarif: ["--format sarif"],
  junit: ["--format junit"],
  markdown: ["--format markdown"],
  html: ["--format html"],
  pdf: ["--format pdf"],
  csv: ["--format csv"],
  xlsx: ["--format xlsx"],
  excel: ["--format xlsx"],
  output: ["--output-file"],
  out: ["--output-file"],
  o: ["--output-file"],
  strict: ["--fail-level warning"],
  werror: ["--fail-level warning"],
  "warnings-as-errors": ["--fail-level warning"],
  silent: ["--quiet"],
  "no-color": ["--color never"],
  "no-colour": ["--color never"],
  "dry-run": ["--diff"],
  preview: ["--diff"],
  ignore: ["--skip"],
  exclude: ["--skip"],
  select: ["--only"],
  rule: ["--only"],
  jobs: ["--threads"],
  j: ["--threads"],
  date: ["--on"],
  day: ["--on"],
  instrument: ["--with"],
  tester: ["--by"],
  circuit: ["--way"],
};

const own = <T>(table: Readonly<Record<string, T>>, word: string): T | undefined =>
  Object.hasOwn(table, word) ? table[word] : undefined;

/** The command meant by one that there is not; `known` are those there are. */
export function guessedCommand(written: string, known: readonly string[]): string | undefined {
  const guess = own(commands, written.toLowerCase());
  const name = guess?.split(" ")[0] ?? "";
  return name.startsWith("-") || known.includes(name) ? guess : undefined;
}

interface Known {
  readonly long?: string | undefined;
  readonly argChoices?: readonly string[] | undefined;
}

/** The option meant by one that a command has not, without its dashes; `known` are those it has. */
export function guessedOption(written: string, known: readonly Known[]): string | undefined {
  return own(options, written.toLowerCase())?.find((guess) => {
    const [name, value] = guess.split(" ");
    return known.some(
      ({ long, argChoices }) => long === name && (value === undefined || (argChoices?.includes(value) ?? true)),
    );
  });
}
