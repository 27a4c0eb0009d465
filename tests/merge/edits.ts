/**
 * What people do to a schedule between two commits, on its text and at random: readings changed, added and struck out,
 * tests of another day, ways retitled, moved, added and removed, layout, comments and line ends.
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { format } from "../../server/format/format.ts";

const example = (name: string): string => readFileSync(`${import.meta.dirname}/../../examples/${name}.ways`, "utf8");

/** A schedule with one of most things, small enough to be merged a thousand times. */
const small = `# Kiln Yard, pottery
wayfile 1

instrument M1 "Multifunction tester" {
  due          2027-11-03
}

installation "Kiln Yard" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  tested       by "R.M." 2026-03-06

  supply {
    earthing     TN-S
    Ze           0.18 Ω
    Ipf          1.38 kA
    bonding      water 10 mm²  continuity 0.03 Ω
    measured     2026-03-05 with M1
  }

  board K "Kiln board" {
    fed-from     supply
    Zdb          0.21 Ω
    rcd east     BS EN 61008 63 A 30 mA type A
    live 2026-03-05 with M1 {
      rcd east     30 mA 1x 24 ms
    }

    # by the door
    way 1 ring "Benches" {
      device       BS EN 60898 B32 6 kA
      cable        singles 70 °C  line 2.5 mm²  cpc 2.5 mm²
      run          K 7 m S1 6 m S2 12 m K
      Ib           21.0 A
      dead 2026-03-04 with M1 {
        ends         r1 0.31 Ω  rn 0.31 Ω  r2 0.31 Ω
        at S1        L-N 0.16 Ω  L-E 0.16 Ω
        at S2        L-N 0.15 Ω  L-E 0.16 Ω
        R1+R2        0.16 Ω
        insulation   500 V  L-N 310 MΩ  L-E >999 MΩ  N-E >999 MΩ
      }
      live 2026-03-05 with M1 {
        Zs           0.41 Ω
      }
    }

    way 2 radial "Kiln" {
      device       BS EN 60898 C20 6 kA
      length       14 m
      dead 2026-03-04 with M1 { R1+R2 0.12 Ω }
      live 2026-03-05 with M1 {
        Zs           0.33 Ω
        rcd 30 mA 1x 22 ms test-button ok
      }
    }

    way 3 radial "Lights" {
      device       BS EN 60898 B6 6 kA
      length       31 m  # to the loft
      live 2026-03-05 with M1 {
        Zs           0.93 Ω
      }
    }

    way 4..6 spare
  }
}
`;

const bases: readonly string[] = [
  example("heron-wharf/workshop"),
  example("quarry-bank/house"),
  example("tanner-row/shop"),
];

/** One edit: what is done, where, and with which figure. */
interface Edit {
  readonly what: keyof typeof kinds;
  readonly at: number;
  readonly figure: number;
}

type Change = (lines: string[], at: number, figure: number) => void;

const isReading = (line: string): boolean =>
  /^\s+(Zs|R1\+R2|at|ends|insulation|rcd|Zdb|Ipf|Ze|bonding)\b.*\d/.test(line);
const isFact = (line: string): boolean => /^\s+(Ib|length|device|serves|route|floor-area|location|points)\b/.test(line);
const isBlank = (line: string): boolean => line.trim() === "";

/** The place of one of the lines that a condition holds for. */
function oneOf(lines: readonly string[], at: number, wanted: (line: string) => boolean): number {
  const places = lines.flatMap((line, index) => (wanted(line) ? [index] : []));
  return places.length === 0 ? -1 : (places[at % places.length] as number);
}

const onOne =
  (wanted: (line: string) => boolean, change: (line: string, figure: number) => string[]): Change =>
  (lines, at, figure) => {
    const place = oneOf(lines, at, wanted);
    if (place >= 0) lines.splice(place, 1, ...change(lines[place] as string, figure));
  };

/** The lines of a block, from the one that opens it; nothing where it has none. */
function blockAt(lines: readonly string[], first: number): [number, number] | undefined {
  if (first < 0 || !lines[first]?.trimEnd().endsWith("{")) return undefined;
  const indent = /^\s*/.exec(lines[first] as string)?.[0] ?? "";
  const last = lines.findIndex((line, index) => index > first && line.startsWith(`${indent}}`));
  return last < 0 ? undefined : [first, last];
}

const isWay = (line: string): boolean => /^\s+way \S+ .*\{$/.test(line);
const isTests = (line: string): boolean => /^\s+(dead|live) .*\{$/.test(line);

const onBlock =
  (
    wanted: (line: string) => boolean,
    change: (lines: string[], first: number, last: number, figure: number) => void,
  ): Change =>
  (lines, at, figure) => {
    const block = blockAt(lines, oneOf(lines, at, wanted));
    if (block) change(lines, ...block, figure);
  };

const indentOf = (line: string): string => /^\s*/.exec(line)?.[0] ?? "";
const days = ["2027-03-10", "2027-03-11", "2028-01-05"] as const;
const dayOf = (figure: number): string => days[figure % days.length] as string;

const kinds = {
  /** One digit of a reading. */
  reading: onOne(isReading, (line, figure) => [line.replace(/(\d)( (?:m|M|k)?(?:Ω|A|s)\b)/, `${figure % 10}$2`)]),
  resolution: onOne(isReading, (line) => [line.replace(/(\.\d+)( Ω)/, "$10$2")]),
  fact: onOne(isFact, (line, figure) => [line.replace(/\d(?=[^\d]*$)/, `${(figure % 9) + 1}`)]),
  remove: onOne(isReading, () => []),
  removeFact: onOne(isFact, () => []),
  comment: onOne(
    (line) => isReading(line) || isFact(line),
    (line, figure) => [`${indentOf(line)}# remark ${figure % 5}`, line],
  ),
  behind: onOne(isReading, (line, figure) => [line.includes("#") ? line : `${line}  # seen ${figure % 3}`]),
  blank: onOne(isFact, (line) => [line, ""]),
  align: onOne(isFact, (line) => [line.replace(/^(\s+\S+) +/, "$1      ")]),
  note: onBlock(isWay, (lines, first, last, figure) => {
    lines.splice(last, 0, `${indentOf(lines[first] as string)}  note "Remark ${figure % 4}"`);
  }),
  query: onBlock(isWay, (lines, first, last, figure) => {
    lines.splice(last, 0, `${indentOf(lines[first] as string)}  query "Question ${figure % 3}"`);
  }),
  /** A later visit: one or two readings of a new day. */
  visit: onBlock(isWay, (lines, first, last, figure) => {
    const indent = `${indentOf(lines[first] as string)}  `;
    const block =
      figure % 2 === 0
        ? [
            `${indent}live ${dayOf(figure)} with M${(figure % 2) + 1} {`,
            `${indent}  Zs  0.${figure % 90} Ω`,
            `${indent}}`,
          ]
        : [
            `${indent}dead ${dayOf(figure)} {`,
            `${indent}  R1+R2  0.${figure % 90} Ω`,
            `${indent}  polarity ok`,
            `${indent}}`,
          ];
    lines.splice(last, 0, ...block);
  }),
  addReading: onBlock(isTests, (lines, first, last, figure) => {
    const indent = `${indentOf(lines[first] as string)}  `;
    lines.splice(
      last,
      0,
      `${indent}${figure % 2 ? "temperature 1" : "voltage 23"}${figure % 7} ${figure % 2 ? "°C" : "V"}`,
    );
  }),
  strikeOut: onBlock(isTests, (lines, first, _, figure) => {
    lines.splice(first + 1, 0, `${indentOf(lines[first] as string)}  struck-out by "R.M." "Wrong way ${figure % 2}"`);
  }),
  removeTests: onBlock(isTests, (lines, first, last) => {
    lines.splice(first, last - first + 1);
  }),
  redate: onBlock(isTests, (lines, first, _, figure) => {
    lines[first] = (lines[first] as string).replace(/\d{4}-\d\d-\d\d/, dayOf(figure));
  }),
  retitle: onOne(isWay, (line, figure) => [line.replace(/"[^"]*"/, `"Title ${figure % 3}"`)]),
  removeWay: onBlock(isWay, (lines, first, last) => {
    lines.splice(first, last - first + 1);
  }),
  addWay: onBlock(isWay, (lines, first, last, figure) => {
    const indent = indentOf(lines[first] as string);
    lines.splice(
      last + 1,
      0,
      "",
      `${indent}way ${40 + (figure % 4)} radial "New ${figure % 5}" {`,
      `${indent}  Ib  ${figure % 20} A`,
      `${indent}}`,
    );
  }),
  /** A way with its comments, to another place of its board. */
  move: onBlock(isWay, (lines, first, last, figure) => {
    const moved = lines.splice(first, last - first + 1);
    const places = lines.flatMap((line, index) => (isWay(line) ? [index] : []));
    lines.splice(places[figure % Math.max(places.length, 1)] ?? first, 0, ...moved);
  }),
  half: onOne(isReading, (line) => [line.replace(/ (Ω|MΩ|ms)\b.*/, "")]),
  stray: onOne(isBlank, (line, figure) => [line, `    ??? ${figure % 3}`]),
} satisfies Record<string, Change>;

const broken: readonly (keyof typeof kinds)[] = ["half", "stray"];
const all = Object.keys(kinds) as (keyof typeof kinds)[];

const edit = (withBroken: boolean): fc.Arbitrary<Edit> =>
  fc.record({
    what: fc.constantFrom(...all.filter((what) => withBroken || !broken.includes(what))),
    at: fc.nat({ max: 400 }),
    figure: fc.nat({ max: 89 }),
  });

function edited(text: string, edits: readonly Edit[]): string {
  const lines = text.split("\n");
  for (const { what, at, figure } of edits) kinds[what](lines, at, figure);
  return lines.join("\n");
}

/** Three versions, in one file's history. */
export interface ThreeWay {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

export const threeWay = ({ broken = false, most = 6 } = {}): fc.Arbitrary<ThreeWay> =>
  fc
    .record({
      base: fc.oneof(
        { weight: 24, arbitrary: fc.constant(small) },
        { weight: 1, arbitrary: fc.constantFrom(...bases) },
      ),
      ours: fc.array(edit(broken), { minLength: 1, maxLength: most }),
      theirs: fc.array(edit(broken), { minLength: 1, maxLength: most }),
      shared: fc.array(edit(broken), { maxLength: 1 }),
      tidy: fc.boolean(),
    })
    .map(({ base, ours, theirs, shared, tidy }) => {
      const version = (edits: readonly Edit[]) => {
        const text = edited(base, [...shared, ...edits]);
        return tidy ? (format(text)?.text ?? text) : text;
      };
      return { base, ours: version(ours), theirs: version(theirs) };
    });
