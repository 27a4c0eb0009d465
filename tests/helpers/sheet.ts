/**
 * A schedule as bare lines, read with patterns of its own and its own figures of copper and breakers: what the checks are
 * held against must not come from the tables and formulas they use themselves.
 */

export interface Part {
  /** First and last line, counted from nought. */
  readonly from: number;
  readonly to: number;
}

/** Where a way stands in its text and what it says there. */
export interface WayText extends Part {
  readonly kind: string;
  readonly board: string;
  readonly text: string;
}

interface BoardText extends Part {
  readonly name: string;
  /** The board's own lines, down to its first way. */
  readonly head: Part;
}

export interface Sheet {
  readonly lines: readonly string[];
  readonly ways: readonly WayText[];
  readonly boards: readonly BoardText[];
}

const indent = (line: string): number => line.length - line.trimStart().length;

function endOf(lines: readonly string[], from: number): number {
  const start = lines[from] ?? "";
  if (!start.trimEnd().endsWith("{")) return from;
  const end = lines.findIndex((line, at) => at > from && line.trim() === "}" && indent(line) === indent(start));
  return end < 0 ? from : end;
}

export function sheetOf(text: string): Sheet {
  const lines = text.split("\n");
  const boards: BoardText[] = [];
  const ways: WayText[] = [];
  for (const [at, line] of lines.entries()) {
    const board = /^\s*board (\w+)/.exec(line);
    if (board) {
      const to = endOf(lines, at);
      const first = lines.findIndex((one, index) => index > at && index < to && /^\s*way \w+/.test(one));
      boards.push({ name: board[1] as string, from: at, to, head: { from: at, to: first < 0 ? to : first - 1 } });
    }
    const way = /^\s*way \w+ (\w+)/.exec(line);
    if (!way) continue;
    const to = endOf(lines, at);
    const own = lines.slice(at, to + 1).join("\n");
    ways.push({ kind: way[1] as string, board: boards.at(-1)?.name ?? "", from: at, to, text: own });
  }
  return { lines, ways, boards };
}

/** The text with some lines of one part written anew, and where that part then stands. */
export function rewritten({ lines }: Sheet, { from, to }: Part, edit: (line: string) => string | readonly string[]) {
  const own = lines.slice(from, to + 1).flatMap(edit);
  const text = [...lines.slice(0, from), ...own, ...lines.slice(to + 1)].join("\n");
  return { text, from: from + 1, to: from + own.length };
}

/** Copper at 20 °C, Ω/m. */
export const copper: Readonly<Record<string, number>> = {
  "1": 0.0181,
  "1.5": 0.0121,
  "2.5": 0.00741,
  "4": 0.00461,
  "6": 0.00308,
  "10": 0.00183,
  "16": 0.00115,
};

/** What a cable carries at 30 °C, alone: two loaded conductors, then three. */
const carries: Readonly<Record<string, Readonly<Record<string, readonly [number, number]>>>> = {
  "flat-twin C": { "1": [16, 16], "1.5": [20, 20], "2.5": [27, 27], "4": [37, 37], "6": [47, 47], "10": [64, 64] },
  "singles B": { "1": [13.5, 12], "1.5": [17.5, 15.5], "2.5": [24, 21], "4": [32, 28], "6": [41, 36], "10": [57, 50] },
  "multicore C": { "1.5": [19.5, 17.5], "2.5": [27, 24], "4": [36, 32], "6": [46, 41], "10": [63, 57] },
  "armoured C": { "1.5": [27, 23], "2.5": [36, 31], "4": [49, 42], "6": [62, 53], "10": [85, 73], "16": [110, 94] },
  "armoured E": { "1.5": [29, 25], "2.5": [39, 33], "4": [52, 44], "6": [66, 56], "10": [90, 78], "16": [115, 99] },
};

const grouped: Readonly<Record<number, number>> = { 1: 1, 2: 0.8, 3: 0.7, 4: 0.65, 5: 0.6, 6: 0.57, 7: 0.54, 8: 0.52 };

/** A drop over a length, mV/A/m, one phase: conductors at 70 °C, then at 90 °C. */
const drops: Readonly<Record<string, readonly [number, number]>> = {
  "1": [44, 46],
  "1.5": [29, 31],
  "2.5": [18, 19],
  "4": [11, 12],
  "6": [7.3, 7.9],
  "10": [4.4, 4.7],
  "16": [2.8, 2.9],
};

export interface Figures {
  readonly standard: string;
  readonly curve: string | undefined;
  readonly rating: number;
  readonly form: string;
  readonly line: string;
  readonly cpc: string | undefined;
  readonly length: number;
  readonly Ib: number;
  readonly R1R2: number | undefined;
  readonly Zs: number | undefined;
  readonly Iz: number | undefined;
  readonly three: boolean;
  /** How many such cables lie in parallel. */
  readonly sets: number;
  readonly serves: string;
}

const number = (text: string | undefined): number => Number.parseFloat(text ?? "");

/** What a way's own lines come to. */
export function figuresOf({ text }: WayText): Figures {
  const device = /device\s+(BS(?: EN)? [\d-]+) (?:([BCD])(\d+)|(\d+) A)/.exec(text);
  const cable = /cable\s+(\S+).*?line ([\d.]+) mm²(?:.*?cpc ([\d.]+) mm²)?/.exec(text);
  const three = /phase\s+three/.test(text) || (/cores [45]/.test(text) && / feeder /.test(text));
  const method = /method (\w)/.exec(text)?.[1] ?? "";
  const sets = number(/parallel (\d+)/.exec(text)?.[1]) || 1;
  const many = (number(/grouped (\d+)/.exec(text)?.[1]) || 1) + sets - 1;
  const alone = carries[`${cable?.[1]} ${method}`]?.[cable?.[2] ?? ""]?.[three ? 1 : 0];
  const share = grouped[many];
  const reading = (label: string): number | undefined => {
    const value = number(new RegExp(`^\\s+${label}\\s+([\\d.]+) Ω`, "m").exec(text)?.[1]);
    return Number.isNaN(value) ? undefined : value;
  };
  return {
    standard: device?.[1] ?? "",
    curve: device?.[2],
    rating: number(device?.[3] ?? device?.[4]),
    form: cable?.[1] ?? "",
    line: cable?.[2] ?? "",
    cpc: cable?.[3],
    length: number(/^\s+length\s+([\d.]+) m/m.exec(text)?.[1]),
    Ib: number(/^\s+Ib\s+([\d.]+) A/m.exec(text)?.[1]),
    R1R2: reading("R1\\+R2"),
    Zs: reading("Zs"),
    Iz: alone !== undefined && share !== undefined ? alone * share * sets : undefined,
    sets,
    three,
    serves: /^\s+serves\s+(.*)$/m.exec(text)?.[1] ?? "",
  };
}

/** The greatest loop impedance, hot, at which a breaker still trips at once. */
export function trips({ curve, rating }: Pick<Figures, "curve" | "rating">): number | undefined {
  const times = { B: 5, C: 10, D: 20 }[curve ?? ""];
  return times === undefined ? undefined : (230 * 0.95) / (times * rating);
}

/** Volts lost from the board to the end, all the load there. */
export function lost({ line, form, length, Ib, three, sets }: Figures): number {
  const row = drops[line];
  if (!row) return Number.NaN;
  return (row[form === "armoured" ? 1 : 0] * length * Ib * (three ? 0.866 : 1)) / sets / 1000;
}
