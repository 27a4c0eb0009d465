/** The history of readings, for people: figures by day with who wrote them and when, and a line of dots to scale. */
import { metered } from "../../calc/uncertainty.ts";
import { capital } from "../../text/words.ts";
import { paragraph, type Report, type Section, table } from "../setting/document.ts";
import type { Drift, Edit, Point, Series, Writing } from "./timeline.ts";

const cautions =
  "When a figure was written is the day of its commit, and who wrote it the author the commit names: neither is proof of who measured it. What was never committed is not seen.";

/** Of a shallow clone, as CI makes it where nothing else is asked. */
export const cutOff =
  "This copy of the repository is cut off: what was written before its first commit is not seen. “git fetch --unshallow” brings it.";

export interface HistoryOf {
  readonly file: string;
  /** The address that was asked for. */
  readonly wanted?: string;
  readonly edits: readonly Edit[];
  readonly series: readonly Series[];
  /** Why the history may begin later than the file: a copy that is cut off, or no repository at all. */
  readonly remarks: readonly string[];
}

export function historyReport({ file, wanted, edits, series, remarks }: HistoryOf): Report {
  const committed = edits.filter(({ commit }) => commit !== undefined);
  const first = committed.at(-1);
  const count = `${committed.length} commit${committed.length === 1 ? "" : "s"} changed it`;
  return {
    title: `History: ${file}${wanted === undefined ? "" : `, ${wanted}`}`,
    lead: [
      ...(committed.length > 0 ? [`${capital(count)}${first ? `, the first on ${first.on}` : ""}.`] : []),
      ...remarks,
    ],
    sections: [...changedSection(series), ...(wanted === undefined ? overview(series) : series.map(seriesSection))],
    cautions,
  };
}

const whose = ({ by, on, commit }: Edit): string =>
  commit === undefined ? "not committed yet" : `${by}, ${on} (${commit})`;

/** The first is when it was written, unless what is known of it begins later. */
const later = ({ writings: [first, ...others] }: Point): readonly Writing[] =>
  first?.from === undefined ? others : [first, ...others];

/** Figures that were changed after they were first written. */
function changedSection(all: readonly Series[]): Section[] {
  const rows = all.flatMap(({ points }) =>
    points.flatMap((point) =>
      later(point).map(({ edit, from, to, kind }) => [
        point.entry.at,
        from ?? "not there",
        `${to ?? "gone"}${kind === "corrected" ? " (corrected with a reason)" : ""}`,
        whose(edit),
      ]),
    ),
  );
  const blocks = table(["reading", "was", "became", "changed by"], rows);
  return blocks.length > 0 ? [{ level: 1, title: "Changed after they were written", blocks }] : [];
}

function overview(all: readonly Series[]): Section[] {
  const again = all.filter(({ points }) => points.length > 1);
  const rows = again.map(({ name, points, drift }) => [
    name,
    points.map(({ entry }) => `${entry.on ?? "no day"}: ${entry.shown}`).join("; "),
    driftText(drift, points),
  ]);
  const once = all.length - again.length;
  const rest =
    once === 0
      ? []
      : [
          paragraph(
            `${capital(once === 1 ? "1 reading was" : `${once} readings were`)} taken on one day only: name a way to see them.`,
          ),
        ];
  const blocks = [...table(["reading", "by day", "drift"], rows), ...rest];
  return [
    {
      level: 1,
      title: "Readings by day",
      blocks: blocks.length > 0 ? blocks : [paragraph("No readings are recorded.")],
    },
  ];
}

function seriesSection({ name, points, drift }: Series): Section {
  const scale = scaleOf(points);
  const rows = points.map((point) => {
    const [first] = point.writings;
    const written = first && first.from === undefined ? whose(first.edit) : "";
    return [
      point.entry.on ?? "no day",
      point.entry.shown,
      point.uncertainty?.shown ?? "",
      scale ? dotsOf(point, scale) : "",
      written,
    ];
  });
  const head = [
    "measured",
    "reading",
    "uncertainty",
    scale ? `${figure(scale.least, points)} to ${figure(scale.most, points)}` : "",
    "first written",
  ];
  const filled = head.map((_, column) => rows.some((row) => row[column] !== ""));
  const shown = (row: readonly string[]) => row.filter((_, column) => filled[column]);
  const text = driftText(drift, points);
  return {
    level: 1,
    title: name,
    blocks: [...table(shown(head), rows.map(shown)), ...(text === "" ? [] : [paragraph(`${capital(text)}.`)])],
  };
}

/** “risen by 0.06 Ω, more than the ±0.03 Ω of both instruments”. */
export function driftText(drift: Drift | undefined, points: readonly Point[]): string {
  if (!drift) return "";
  const size = figure(Math.abs(drift.by), points);
  const moved = Math.abs(drift.by) < 1e-12 ? "unchanged" : `${drift.by > 0 ? "risen" : "fallen"} by ${size}`;
  if (drift.uncertainty === undefined || moved === "unchanged") return moved;
  const more = Math.abs(drift.by) > drift.uncertainty ? "more than" : "within";
  return `${moved}, ${more} the ±${figure(drift.uncertainty, points)} of both readings' instruments`;
}

const bases: Readonly<Record<string, "Ω" | "s" | "A" | "V">> = {
  Ω: "Ω",
  mΩ: "Ω",
  kΩ: "Ω",
  MΩ: "Ω",
  GΩ: "Ω",
  ms: "s",
  s: "s",
  mA: "A",
  A: "A",
  kA: "A",
  V: "V",
};

/** The base unit that the figure of a reading is in; nothing where it has none, or is no quantity. */
export const baseUnitOf = (reading: Point["entry"]["reading"]) =>
  reading && "unit" in reading ? bases[reading.unit] : undefined;

function figure(value: number, points: readonly Point[]): string {
  const reading = points.map(({ entry }) => entry.reading).find((one) => one !== undefined && "unit" in one);
  const unit = baseUnitOf(reading);
  return unit ? metered(value, unit) : String(value);
}

const width = 24;

interface Scale {
  readonly least: number;
  readonly most: number;
}

/** From the least to the greatest figure with what each may be out. */
function scaleOf(points: readonly Point[]): Scale | undefined {
  const ends = points.flatMap(({ value, uncertainty }) =>
    value === undefined ? [] : [value - (uncertainty?.value ?? 0), value + (uncertainty?.value ?? 0)],
  );
  if (points.filter(({ value }) => value !== undefined).length < 2) return undefined;
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  return most > least ? { least, most } : undefined;
}

/** `──●──` where the figure is, as wide as its uncertainty. */
function dotsOf({ value, uncertainty }: Point, { least, most }: Scale): string {
  if (value === undefined) return "";
  const column = (at: number): number => Math.round(((at - least) / (most - least)) * (width - 1));
  const around = uncertainty?.value ?? 0;
  const [from, at, to] = [column(value - around), column(value), column(value + around)];
  return Array.from({ length: to + 1 }, (_, index) => (index === at ? "●" : index >= from ? "─" : "·")).join("");
}
