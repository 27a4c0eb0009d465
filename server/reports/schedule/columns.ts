/**
 * The columns of a schedule of circuit details and test results: what the standard's model forms hold, in an order and
 * with headings of our own. The keys name them in a file of values.
 */
import type { Band, Column } from "../setting/document.ts";

const column = (key: string, title: string, unit = ""): Column => ({ key, title, unit });
const words = (key: string, title: string): Column => ({ key, title, unit: "", wraps: true });

const details = [
  {
    title: "Circuit",
    columns: [column("way", "way"), column("line", "line"), words("serves", "serves"), column("points", "points")],
  },
  {
    title: "Conductors",
    columns: [
      words("wiring", "wiring"),
      column("method", "method"),
      column("live", "live", "mm²"),
      column("cpc", "cpc", "mm²"),
      column("length", "length", "m"),
    ],
  },
  {
    title: "Protective device",
    columns: [
      column("device-standard", "BS (EN)"),
      column("device", "type, In"),
      column("breaking", "breaks", "kA"),
      column("disconnect", "within", "s"),
      column("max-Zs", "max Zs", "Ω"),
    ],
  },
  {
    title: "RCD",
    columns: [
      column("rcd-standard", "BS (EN)"),
      column("rcd-type", "type"),
      column("rcd-sensitivity", "IΔn", "mA"),
      column("rcd-rating", "In", "A"),
    ],
  },
] as const satisfies readonly Band[];

const ends = [column("r1", "r1", "Ω"), column("rn", "rn", "Ω"), column("r2", "r2", "Ω")];
const continuity = [column("R1+R2", "R1+R2", "Ω"), column("R2", "R2", "Ω")];
const live = [
  column("Zs", "Zs", "Ω"),
  column("rcd-time", "RCD 1×", "ms"),
  column("rcd-button", "RCD button"),
  column("afdd-button", "AFDD button"),
];

/** On paper: of several pairs of conductors the lowest. */
export const paperBands: readonly Band[] = [
  ...details,
  {
    title: "Dead tests",
    columns: [
      ...ends,
      ...continuity,
      column("test-voltage", "at", "V"),
      column("live-live", "live–live", "MΩ"),
      column("live-earth", "live–earth", "MΩ"),
      column("polarity", "polarity"),
    ],
  },
  { title: "Live tests", columns: live },
  { title: "", columns: [column("notes", "notes")] },
];

/** In a file of values: every pair for itself, with the day, the instrument and the person, so that it can come back. */
export const valueBands: readonly Band[] = [
  { title: "Board", columns: [column("board", "board")] },
  ...details,
  {
    title: "Dead tests",
    columns: [
      ...ends,
      ...continuity,
      column("test-voltage", "test voltage", "V"),
      column("L-N", "L-N", "MΩ"),
      column("L-E", "L-E", "MΩ"),
      column("N-E", "N-E", "MΩ"),
      column("L-L", "L-L", "MΩ"),
      column("polarity", "polarity"),
      column("dead-on", "dead tests on"),
      column("dead-with", "dead tests with"),
    ],
  },
  {
    title: "Live tests",
    columns: [
      ...live,
      column("Ipf", "Ipf", "kA"),
      column("live-on", "live tests on"),
      column("live-with", "live tests with"),
    ],
  },
  { title: "Notes", columns: [words("notes", "notes")] },
];

/** Columns that are left out of a paper where no circuit of the board has anything in them, with what that means. */
export const leftOutWhereUnused: readonly (readonly [keys: readonly string[], sentence: string])[] = [
  [["r1", "rn", "r2"], "no ring"],
  [["R2"], "no R2 by itself"],
  [["line"], "one line only"],
  [["rcd-standard", "rcd-type", "rcd-sensitivity", "rcd-rating", "rcd-time", "rcd-button"], "no RCD"],
  [["rcd-rating"], "no RCD with a rating of its own"],
  [["afdd-button"], "no AFDD"],
];
