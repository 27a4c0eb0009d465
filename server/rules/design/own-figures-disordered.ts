import { amps, milliohms, ohms, plain, squareMillimetres } from "../../calc/result.ts";
import type { CableTypeFact, DeviceFigures } from "../../model/names.ts";
import type { Fact, Quantity } from "../../model/values.ts";
import { isOneOf } from "../../text/words.ts";
import { factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (last: string) => `wayfile 1
cable-type m2 mineral  line 2.5 mm²  cpc 2.5 mm²  carries 31 A  drop 17 mV/A/m  by "Own copy, page 412"
cable-type m4 mineral  line 4 mm²  cpc 4 mm²  carries ${last}  drop 10 mV/A/m  by "Own copy, page 412"
installation "Plant" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
  }
}`;

const device = (last: string) => `wayfile 1
device-figures BS 88-3 45 A  Zs 0.96 Ω  within 5 s  by "Own copy, Table 41.4"
device-figures BS 88-3 63 A  Zs ${last}  within 5 s  by "Own copy, Table 41.4"
installation "Plant" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
  }
}`;

/** The figures a larger conductor has more of, and those it has less of. */
const rising = ["carries"] as const;
const falling = ["drop", "r1"] as const;
type Figure = (typeof rising)[number] | (typeof falling)[number];

interface Row {
  readonly fact: Fact;
  readonly size: number;
  readonly figures: Partial<Record<Figure, Quantity>>;
}

export default installationRule({
  id: "design/own-figures-disordered",
  severity: "warning",
  since: "0.1",
  title: "Figures that were copied from a book are out of order.",
  why: "In one table a larger conductor carries more, and drops and resists less. Where it does not, a digit slipped or two lines were exchanged, and every circuit of that cable is judged by it. Compare the lines with the page.",
  clauses: ["523.1"],
  examples: [
    {
      bad: sample("24 A").replace("\ninstallation", `\n${" ".repeat(54)}^^^^\ninstallation`),
      good: sample("42 A"),
    },
    {
      bad: device("1.20 Ω").replace("\ninstallation", `\n${" ".repeat(32)}^^^^^^\ninstallation`),
      good: device("0.55 Ω"),
    },
  ],
  check({ names }, report) {
    for (const table of Map.groupBy(names.devices, tableOf).values()) judgeDevices(table, report);
    const rows = [...names.cableTypes.values()].flatMap(([fact]) => (fact ? rowOf(fact) : []));
    const tables = Map.groupBy(rows, ({ key }) => key);
    for (const table of tables.values())
      judge(
        table.toSorted((one, other) => one.size - other.size),
        report,
      );
  },
});

/** Devices of one standard and type, of one page and for one time, belong to one table. */
const tableOf = ({ args }: DeviceFigures): string =>
  [args.standard.value, args.curve?.curve, args.within.value, args.loop ? "Zs" : "opens", args.by.value].join("|");

const ratingOf = ({ args }: DeviceFigures): number => args.curve?.rating ?? args.rating?.value ?? 0;

/** A larger device of the same kind needs more current, and so has the lower limit. */
function judgeDevices(rows: readonly DeviceFigures[], report: Reporter): void {
  const sorted = rows.toSorted((one, other) => ratingOf(one) - ratingOf(other));
  for (const [at, row] of sorted.entries()) {
    const before = sorted[at - 1];
    const [less, more] = [before?.args.loop ?? before?.args.opens, row.args.loop ?? row.args.opens];
    if (!before || !less || !more || ratingOf(before) === ratingOf(row)) continue;
    if (row.args.loop ? more.value < less.value : more.value > less.value) continue;
    const shown = (value: number) => (row.args.loop ? ohms(value) : amps(value));
    report(valueSpot(row, more), {
      message: `${amps(ratingOf(row))} with ${shown(more.value)} does not fit ${amps(ratingOf(before))} with ${shown(less.value)} in the same table: compare both with the page.`,
      related: [{ spot: factSpot(before), message: "The next smaller rating." }],
    });
  }
}

function judge(rows: readonly Row[], report: Reporter): void {
  for (const [at, row] of rows.entries()) {
    const before = rows[at - 1];
    if (!before || before.size === row.size) continue;
    for (const name of [...rising, ...falling]) {
      const [less, more] = [before.figures[name], row.figures[name]];
      if (!less || !more) continue;
      const grows = isOneOf(rising, name);
      if (grows ? more.value > less.value : more.value < less.value) continue;
      report(valueSpot(row.fact, more), {
        message: `${squareMillimetres(row.size)} ${name} ${written(name, more)} does not fit ${squareMillimetres(before.size)} with ${written(name, less)} in the same table: compare both with the page.`,
        related: [{ spot: factSpot(before.fact), message: "The next smaller size." }],
      });
    }
  }
}

const written = (name: Figure, { value }: Quantity): string =>
  name === "carries" ? amps(value) : name === "drop" ? `${plain(value * 1000)} mV` : milliohms(value);

/** Cables of one make, and of one page of one book, belong to one table. */
function rowOf(fact: CableTypeFact): (Row & { readonly key: string })[] {
  const { line, carries, drop, r1, construction, insulation, material, cores, by } = fact.args;
  if (!line) return [];
  const size = line.value;
  const figures = { ...(carries ? { carries } : {}), ...(drop ? { drop } : {}), ...(r1 ? { r1 } : {}) };
  const key = [construction, insulation, material, cores, by].map((told) => String(told?.value)).join("|");
  return Object.keys(figures).length === 0 ? [] : [{ fact, size, figures, key }];
}
