/**
 * One danger at a time, put into a sound schedule. Each says which checks should speak of it and where; where the circuit
 * bears the change by figures of the bench's own, there is no danger and nothing is put in.
 */
import {
  copper,
  type Figures,
  figuresOf,
  lost,
  type Part,
  rewritten,
  type Sheet,
  trips,
  type WayText,
} from "./sheet.ts";

interface Spoilt {
  readonly text: string;
  /** The lines, counted from one, among which a finding must stand. */
  readonly from: number;
  readonly to: number;
  readonly expected: readonly string[];
}

type Severity = "error" | "warning" | "information";

interface Danger {
  readonly name: string;
  readonly spoil: (sheet: Sheet, next: () => number) => Spoilt | undefined;
}

type Edit = (line: string) => string | readonly string[];

const sizes = ["1", "1.5", "2.5", "4", "6", "10", "16"];
const ratings = [6, 10, 16, 20, 25, 32, 40, 50, 63];
const capacity = ["design/device-over-capacity", "design/ring-device", "design/socket-radial-cable"];
const overZs = ["loop/zs-over-limit", "loop/zs-over-cold-limit"];
const missingRcd = {
  sockets: "rcd/missing-for-sockets",
  bathroom: "rcd/missing-in-bathroom",
  charger: "rcd/missing-for-charger",
};

function pick<T>(items: readonly T[], next: () => number): T | undefined {
  return items[Math.floor(next() * items.length)];
}

/** A danger to one way of those it fits. */
function toWay(
  name: string,
  expected: readonly string[] | ((way: WayText) => readonly string[]),
  fits: (way: WayText, figures: Figures, sheet: Sheet) => boolean,
  edit: (way: WayText, figures: Figures, next: () => number) => Edit,
): Danger {
  return {
    name,
    spoil(sheet, next) {
      const way = pick(
        sheet.ways.filter((one) => fits(one, figuresOf(one), sheet)),
        next,
      );
      if (!way) return undefined;
      const ids = typeof expected === "function" ? expected(way) : expected;
      return { ...rewritten(sheet, way, edit(way, figuresOf(way), next)), expected: ids };
    },
  };
}

/** A danger on lines outside the ways: found wherever it is told. */
function toAll(
  name: string,
  expected: readonly string[],
  fits: (sheet: Sheet) => boolean,
  edit: (sheet: Sheet) => Edit,
): Danger {
  return {
    name,
    spoil(sheet) {
      if (!fits(sheet)) return undefined;
      const whole: Part = { from: 0, to: sheet.lines.length - 1 };
      return { ...rewritten(sheet, whole, edit(sheet)), expected };
    },
  };
}

const has = (sheet: Sheet, pattern: RegExp): boolean => sheet.lines.some((line) => pattern.test(line));
const isTT = (sheet: Sheet): boolean => has(sheet, /^\s+earthing\s+TT/) && has(sheet, /^\s+electrode/);
const ownEarth = ({ text }: WayText): boolean => /earthing TT/.test(text);
const isRing = ({ kind }: WayText): boolean => kind === "ring";
const always = (): boolean => true;
const isRcbo = ({ text }: WayText): boolean => /device .* 30 mA/.test(text);

/** A line by its word: rewritten, or left out where `by` is undefined. */
const onLine =
  (word: RegExp, by: ((line: string) => string) | undefined): Edit =>
  (line) =>
    word.test(line) ? (by ? by(line) : []) : line;

const replace = (word: RegExp, what: RegExp, by: string): Edit => onLine(word, (line) => line.replace(what, by));
const together =
  (...edits: readonly Edit[]): Edit =>
  (line) =>
    edits.reduce<readonly string[]>((lines, edit) => lines.flatMap((one) => edit(one)), [line]);

const withRating = (rating: number): Edit =>
  onLine(/^\s+device/, (line) => line.replace(/ ([BCD])\d+ /, ` $1${rating} `).replace(/ \d+ A /, ` ${rating} A `));

const larger = (rating: number, by: number): number => ratings[ratings.indexOf(rating) + by] ?? Number.NaN;
const smaller = (size: string, by: number): string | undefined => sizes[sizes.indexOf(size) - by];

/** As the meters would show it once the way's own conductors read so much more. */
const reading = (more: number): Edit =>
  together(
    onLine(/^\s+R1\+R2/, (line) =>
      line.replace(/[\d.]+ Ω/, (value) => `${(Number.parseFloat(value) + more).toFixed(2)} Ω`),
    ),
    onLine(/^\s+Zs/, (line) =>
      line.replace(/[\d.]+ Ω/, (value) => `${(Number.parseFloat(value) + more).toFixed(2)} Ω`),
    ),
  );

const upsize = (by: number): Danger =>
  toWay(
    `device ${by} size${by > 1 ? "s" : ""} up, cable too small for it`,
    capacity,
    (way, { rating, Iz }) => {
      const up = larger(rating, by);
      return isRing(way) ? up > 32 : Iz !== undefined && up > Iz * 1.01;
    },
    (_, { rating }) => withRating(larger(rating, by)),
  );

const downsize = (by: number): Danger =>
  toWay(
    `cable ${by} size${by > 1 ? "s" : ""} down`,
    [...capacity, "design/ring-cable-size", "design/ring-capacity"],
    (way, { line, rating, cpc }) => {
      const down = smaller(line, by);
      if (!down || !cpc) return false;
      const thinner = figuresOf({ ...way, text: way.text.replace(/line [\d.]+/, `line ${down}`) });
      return isRing(way) || (thinner.Iz !== undefined && rating > thinner.Iz * 1.01);
    },
    (way, { line, cpc, length, sets }) => {
      const down = smaller(line, by) as string;
      const back = Number(cpc) > Number(down) ? down : (cpc as string);
      const more =
        (length / sets) * ((copper[down] ?? 0) - (copper[line] ?? 0) + (copper[back] ?? 0) - (copper[cpc ?? ""] ?? 0));
      return together(
        onLine(/^\s+cable/, (one) => one.replace(/line [\d.]+/, `line ${down}`).replace(/cpc [\d.]+/, `cpc ${back}`)),
        isRing(way) ? (one) => one : reading(more),
      );
    },
  );

const withdrawRcd = together(
  onLine(/^\s+device/, (line) => line.replace("61009", "60898").replace(/ 30 mA type A/, "")),
  onLine(/^\s+(rcd|test-button)\b/, undefined),
);

/** The rules of protection that a circuit would break without its RCD, by its own lines. */
function rcdNeeds({ text }: WayText): readonly string[] {
  return [
    ...(/serves.*sockets/.test(text) ? [missingRcd.sockets, "rcd/missing-outdoors"] : []),
    ...(/place bathroom(?! zone outside)/.test(text) ? [missingRcd.bathroom] : []),
    ...(/ev-charger/.test(text) ? [missingRcd.charger] : []),
    ...(/place pool/.test(text) ? ["place/pool-without-rcd"] : []),
    ...(/place agricultural/.test(text) ? ["place/agricultural-without-rcd"] : []),
    ...(/place caravan/.test(text) ? ["place/caravan-without-rcd"] : []),
    ...(/place marina/.test(text) ? ["place/marina-without-rcd"] : []),
    // Behind an RCD of its board's it is that one which is too coarse.
    "rcd/sensitivity-too-high",
  ];
}

const rcdTime = (ms: string): Edit => replace(/^\s+rcd\s/, /1x [\d.]+ ms/, `1x ${ms}`);
const insulationOf = (pair: string): Edit =>
  replace(/^\s+insulation/, new RegExp(`${pair} >?\\d+ MΩ`), `${pair} 0.5 MΩ`);
const withoutBlock =
  (word: string): ((way: WayText) => Edit) =>
  () => {
    let within = false;
    return (line) => {
      if (new RegExp(`^\\s+${word} \\d{4}.*\\{`).test(line)) within = true;
      if (!within) return line;
      if (line.trim() === "}") within = false;
      return [];
    };
  };

const slip = (
  name: string,
  word: RegExp,
  expected: readonly string[],
  by: (value: string) => string,
  unit = "Ω",
): Danger =>
  toWay(
    name,
    expected,
    // A circuit's own electrode whose resistance is not said leaves any loop possible.
    (way) => new RegExp(word.source, "m").test(way.text) && !ownEarth(way),
    () => onLine(word, (line) => line.replace(new RegExp(`([\\d.]+) ${unit}`), (_, value: string) => by(value))),
  );

/** Sums of what the schedule itself says is in use at once. */
function demandOn({ lines, ways, boards }: Sheet): number | undefined {
  if (has({ lines, ways, boards }, /phases\s+three|feeder/)) return undefined;
  return boards.reduce((sum, { name, head }) => {
    const share = Number(/diversity\s+([\d.]+)/.exec(lines.slice(head.from, head.to + 1).join("\n"))?.[1] ?? 100) / 100;
    return sum + share * ways.filter((way) => way.board === name).reduce((own, way) => own + figuresOf(way).Ib, 0);
  }, 0);
}

/** Tripped times over the limit of the first breaker that needs it. */
const overLimit = ({ curve, rating }: Figures): number => (trips({ curve, rating }) ?? Number.NaN) * 1.06;

export const dangers: readonly Danger[] = [
  upsize(1),
  upsize(2),
  downsize(1),
  downsize(2),
  toWay(
    "length tripled: loop or drop over the limit",
    [...overZs, "drop/over-limit", "loop/design-loop-over-limit", "loop/relies-on-rcd"],
    (way, figures, sheet) => {
      const { length, R1R2, Zs, serves, curve, rating } = figures;
      if (R1R2 === undefined || Zs === undefined || Number.isNaN(length)) return false;
      const volts = lost({ ...figures, length: length * 3 });
      const limit = trips({ curve, rating });
      const tooLong =
        volts > 230 * (serves.includes("lighting") ? 0.03 : 0.05) * 1.02 * (figures.three ? Math.sqrt(3) : 1);
      return (
        (tooLong && way.kind !== "feeder") ||
        (!isTT(sheet) && !ownEarth(way) && limit !== undefined && Zs + 2 * R1R2 > limit * 0.82)
      );
    },
    (_, { R1R2, length }) => together(replace(/^\s+length/, /[\d.]+ m/, `${length * 3} m`), reading(2 * (R1R2 ?? 0))),
  ),
  toWay(
    "length tripled on paper only",
    ["continuity/r1r2-against-length"],
    (_, { length, R1R2 }) => length >= 5 && (R1R2 ?? 0) > 0.1,
    (_, { length }) => replace(/^\s+length/, /[\d.]+ m/, `${length * 3} m`),
  ),
  toWay(
    "conductors read twice what the length gives",
    ["continuity/r1r2-against-length", "ring/r1r2-against-ring"],
    (_, { R1R2 }) => (R1R2 ?? 0) > 0.15,
    (_, { R1R2 }) => reading(R1R2 ?? 0),
  ),
  toWay(
    "protective conductor two sizes smaller than the readings show",
    ["continuity/r1r2-against-length", "design/cable-does-not-exist", "ring/cpc-ratio", "design/cpc-too-small"],
    (_, { cpc, R1R2 }) => cpc !== undefined && smaller(cpc, 2) !== undefined && (R1R2 ?? 0) > 0.15,
    (_, { cpc }) => replace(/^\s+cable/, /cpc [\d.]+/, `cpc ${smaller(cpc ?? "", 2)}`),
  ),
  toWay(
    "grouped with five more",
    ["design/device-over-capacity", "design/ring-capacity"],
    (way, { Iz, rating }) => {
      const share = /grouped (\d)/.exec(way.text) ? undefined : 0.57;
      if (Iz === undefined || share === undefined || way.kind === "feeder") return false;
      return isRing(way) ? Iz * share < 20 * 0.99 : Iz * share < rating * 0.99;
    },
    () => onLine(/^\s+route/, (line) => `${line} grouped 6`),
  ),
  toWay(
    "no RCD where one is needed",
    rcdNeeds,
    (way) => isRcbo(way) && rcdNeeds(way).length > 1,
    () => withdrawRcd,
  ),
  toWay(
    "flat cable in a wall without an RCD",
    ["rcd/missing-for-concealed", "rcd/sensitivity-too-high"],
    (way) => !isRcbo(way) && /flat-twin/.test(way.text) && /clipped method C/.test(way.text),
    () => replace(/^\s+route/, /clipped method C/, "wall method C depth 20 mm"),
  ),
  toAll(
    "lights of a dwelling without an RCD",
    ["rcd/missing-for-lighting", "rcd/sensitivity-too-high"],
    ({ ways }) => ways.some((way) => /serves\s+lighting/.test(way.text) && !isRcbo(way)),
    () => replace(/^\s+premises/, /commercial/, "dwelling"),
  ),
  toAll(
    "TT without an RCD at the board",
    ["rcd/missing-in-tt"],
    (sheet) => isTT(sheet) && sheet.ways.some((way) => way.kind !== "feeder" && !isRcbo(way)),
    () => {
      let within = false;
      return (line) => {
        if (/^ {4}live /.test(line)) within = true;
        if (within) {
          if (line.trim() === "}") within = false;
          return [];
        }
        return line.replace(/BS EN 61008 100 A \d+ mA type A delayed/, "BS EN 60947-3 100 A");
      };
    },
  ),
  toWay(
    "type AC on a charging point",
    ["rcd/type-unsuitable"],
    ({ text }) => /ev-charger/.test(text),
    () => replace(/^\s+device/, /type A\b/, "type AC"),
  ),
  toWay(
    "type AC where electronics are supplied",
    ["rcd/type-unsuitable"],
    ({ text }) => /serves.*(data|sockets)/.test(text) && isRcbo({ text } as WayText),
    () => replace(/^\s+device/, /type A\b/, "type AC"),
  ),
  toWay(
    "100 mA for sockets, bathroom or charging",
    ["rcd/sensitivity-too-high"],
    (way) => isRcbo(way) && rcdNeeds(way).length > 1,
    () => together(replace(/^\s+device/, /30 mA/, "100 mA"), replace(/^\s+rcd\s/, /30 mA/, "100 mA")),
  ),
  toAll(
    "Ze above what the distributor declares",
    ["loop/ze-above-declared"],
    (sheet) => !isTT(sheet),
    (sheet) => {
      const most = has(sheet, /earthing\s+TN-S/) ? 0.8 : 0.35;
      const ze = Number(sheet.lines.map((line) => /^\s+Ze\s+([\d.]+)/.exec(line)?.[1]).find(Boolean));
      const more = most + 0.07 - ze;
      return onLine(/^\s+(Ze|Zdb|Zs)\s/, (line) =>
        line.replace(/[\d.]+ Ω/, (value) => `${(Number.parseFloat(value) + more).toFixed(2)} Ω`),
      );
    },
  ),
  toAll(
    "fault current above what breakers break",
    ["fault/breaking-capacity-exceeded", "coordination/breaking-capacity-exceeded"],
    ({ ways }) => ways.some(({ text }) => / 6 kA/.test(text)),
    () => replace(/^ {4}Ipf/, /[\d.]+ kA/, "7.2 kA"),
  ),
  toAll(
    "cut-out below the demand",
    ["demand/over-cutout"],
    (sheet) => (demandOn(sheet) ?? 0) > 33,
    () => replace(/^\s+cutout/, /100 A/, "30 A"),
  ),
  toAll(
    "earthing conductor too small",
    ["protective/earthing-conductor-too-small"],
    (sheet) => !isTT(sheet),
    () => replace(/^\s+earthing-conductor/, /16 mm²/, "2.5 mm²"),
  ),
  toAll("a service not bonded", ["protective/bonding-missing"], always, () =>
    replace(/^\s+bonding\s+\w/, /\d+ mm².*$/, 'missing "No clamp on it"'),
  ),
  toAll("bonding too small", ["protective/bonding-too-small"], always, () =>
    replace(/^\s+bonding\s/, /10 mm²/, "2.5 mm²"),
  ),
  toWay(
    "Zs over the limit",
    ["loop/zs-over-limit", "loop/relies-on-rcd"],
    (way, figures, sheet) => !isTT(sheet) && !ownEarth(way) && Number.isFinite(overLimit(figures)),
    (_, figures) => replace(/^\s+Zs/, /[\d.]+ Ω/, `${overLimit(figures).toFixed(2)} Ω`),
  ),
  toWay(
    "Zs above the limit of a warm conductor",
    ["loop/zs-over-cold-limit"],
    (way, figures, sheet) => !isTT(sheet) && !ownEarth(way) && Number.isFinite(overLimit(figures)),
    (_, figures) => replace(/^\s+Zs/, /[\d.]+ Ω/, `${(overLimit(figures) * 0.85).toFixed(2)} Ω`),
  ),
  toWay(
    "Zs below the board's",
    ["loop/zs-below-board", "loop/zs-below-conductors"],
    (way, { R1R2 }, sheet) => !isTT(sheet) && !ownEarth(way) && (R1R2 ?? 0) > 0.05,
    () => replace(/^\s+Zs/, /[\d.]+ Ω/, "0.05 Ω"),
  ),
  toWay("R1+R2 missing", ["continuity/missing"], always, () => onLine(/^\s+R1\+R2/, undefined)),
  toWay("R1+R2 open", ["continuity/open"], always, () => replace(/^\s+R1\+R2/, /[\d.]+ Ω/, ">1999 Ω")),
  toWay(
    "a protective conductor that is open, as the ground shows it",
    ["loop/cpc-open", "loop/zs-over-limit", "loop/zs-over-rcd-limit"],
    (way, _, sheet) => !isTT(sheet) && !ownEarth(way),
    () => replace(/^\s+Zs/, /[\d.]+ Ω/, "180 Ω"),
  ),
  toWay("R1+R2 of 180 Ω", ["continuity/open"], always, () =>
    together(replace(/^\s+R1\+R2/, /[\d.]+ Ω/, "180 Ω"), onLine(/^\s+Zs/, undefined)),
  ),
  toWay(
    "R1+R2 known only to be below 99 Ω",
    ["loop/expected-over-limit"],
    (way, _, sheet) => !isTT(sheet) && !ownEarth(way),
    () => together(replace(/^\s+R1\+R2/, /[\d.]+ Ω/, "<99 Ω"), onLine(/^\s+Zs/, undefined)),
  ),
  toAll(
    "Ze known only to be below 20 Ω",
    ["loop/ze-above-declared"],
    (sheet) => !isTT(sheet) && has(sheet, /^\s+Ze +[\d.]+ Ω$/),
    () => replace(/^\s+Ze/, /[\d.]+ Ω/, "<20 Ω"),
  ),
  toAll(
    "fault currents known only to be below 200 kA",
    ["fault/current-missing"],
    (sheet) => has(sheet, /^\s+Ipf +[\d.]+ kA$/),
    () => replace(/^\s+Ipf/, /[\d.]+ kA/, "<200 kA"),
  ),
  ...["L-N", "L-E", "N-E", "L-L"].map((pair) =>
    toWay(
      `insulation ${pair} 0.5 MΩ`,
      ["insulation/below-minimum"],
      ({ text }) =>
        text.includes(`${pair} `) && /insulation/.test(text) && new RegExp(`insulation.*${pair} `).test(text),
      () => insulationOf(pair),
    ),
  ),
  toWay("insulation missing", ["insulation/missing"], always, () => onLine(/^\s+insulation/, undefined)),
  toWay(
    "insulation to earth missing",
    ["insulation/pair-missing"],
    ({ text }) => /L-E >?\d+ MΩ/.test(text),
    () => replace(/^\s+insulation/, /L-E >?\d+ MΩ/, ""),
  ),
  toWay("polarity wrong", ["polarity/wrong"], always, () => replace(/^ {8}polarity/, /ok/, "wrong")),
  toWay(
    "polarity missing",
    ["polarity/missing"],
    (way) => !isRing(way),
    () => onLine(/^ {8}polarity/, undefined),
  ),
  toWay("RCD trips in 350 ms", ["rcd/time-over-limit"], isRcbo, () => rcdTime("350 ms")),
  toWay("RCD does not trip", ["rcd/time-over-limit"], isRcbo, () => rcdTime(">300 ms")),
  toWay("RCD untested", ["rcd/test-missing"], isRcbo, () => onLine(/^\s+rcd\s/, undefined)),
  toWay("test button failed", ["rcd/test-button-failed"], isRcbo, () => replace(/^\s+test-button/, /ok/, "failed")),
  toWay("test button not pressed", ["rcd/test-button-missing"], isRcbo, () => onLine(/^\s+test-button/, undefined)),
  toWay("another RCD's sensitivity tested", ["rcd/test-sensitivity", "rcd/test-missing"], isRcbo, () =>
    replace(/^\s+rcd\s/, /30 mA/, "100 mA"),
  ),
  ...["r1", "rn", "r2"].map((conductor) =>
    toWay(`ring with ${conductor} open`, ["ring/open-conductor"], isRing, () =>
      replace(/^\s+ends/, new RegExp(`${conductor} [\\d.]+ Ω`), `${conductor} >1999 Ω`),
    ),
  ),
  toWay("ring's line 0.4 Ω above its neutral", ["ring/ends-differ"], isRing, () =>
    onLine(/^\s+ends/, (line) =>
      line.replace(/r1 ([\d.]+)/, (_, value: string) => `r1 ${(Number(value) + 0.4).toFixed(2)}`),
    ),
  ),
  toWay("ring's ends missing", ["ring/ends-missing"], isRing, () => onLine(/^\s+ends/, undefined)),
  toWay("polarity wrong at a point", ["polarity/wrong", "record/polarity-disagrees"], isRing, () =>
    replace(/^\s+at S2/, /polarity ok/, "polarity wrong"),
  ),
  toWay("open at a point", ["ring/point-open"], isRing, () => replace(/^\s+at S2/, /L-E [\d.]+ Ω/, "L-E >1999 Ω")),
  toWay("a poor joint at a point", ["ring/point-reading", "ring/poor-contact"], isRing, () =>
    onLine(/^\s+at S2/, (line) =>
      line.replace(
        /(L-[NE]) ([\d.]+)/g,
        (_, pair: string, value: string) => `${pair} ${(Number(value) + 0.5).toFixed(2)}`,
      ),
    ),
  ),
  toWay(
    "spur off a spur",
    ["ring/spur-off-spur"],
    ({ text }) => /run .* X1$/m.test(text),
    () => onLine(/^\s+run .* X1$/, (line) => `${line} 2 m X2`),
  ),
  toWay("ring that does not come back", ["ring/run-not-closed"], isRing, () =>
    replace(/^\s+run\s+A /, / \d+ m A$/, ""),
  ),
  {
    name: "R1+R2 copied down the column",
    spoil(sheet) {
      const board = sheet.boards.find(({ name }) => {
        const own = sheet.ways.filter((way) => way.board === name).map((way) => figuresOf(way));
        const by = own.map(
          ({ length, line, cpc, sets }) => (length / sets) * ((copper[line] ?? 0) + (copper[cpc ?? ""] ?? Number.NaN)),
        );
        const known = by.filter(Number.isFinite);
        return known.length >= 5 && Math.max(...known) - Math.min(...known) > 0.25;
      });
      if (!board) return undefined;
      return {
        ...rewritten(sheet, board, replace(/^\s+R1\+R2/, /[\d.]+ Ω/, "0.31 Ω")),
        expected: ["population/equal-readings"],
      };
    },
  },
  {
    name: "trip times copied down the column",
    spoil(sheet) {
      const board = sheet.boards.find(
        ({ name }) => sheet.ways.filter((way) => way.board === name && isRcbo(way)).length >= 5,
      );
      if (!board) return undefined;
      return { ...rewritten(sheet, board, rcdTime("24.6 ms")), expected: ["population/equal-trip-times"] };
    },
  },
  slip(
    "R1+R2 in milliohms",
    /^\s+R1\+R2/,
    ["continuity/r1r2-against-length", "ring/r1r2-against-ring"],
    (value) => `${Math.round(Number(value) * 1000)} Ω`,
  ),
  slip(
    "Zs ten times too great",
    /^\s+Zs/,
    [...overZs, "loop/zs-disagrees", "loop/zs-over-rcd-limit"],
    (value) => `${(Number(value) * 10).toFixed(2)} Ω`,
  ),
  slip(
    "trip time in seconds",
    /^\s+rcd\s/,
    ["rcd/time-too-short"],
    (value) => `${(Number(value) / 1000).toFixed(4)} ms`,
    "ms",
  ),
  slip(
    "length ten times too great",
    /^\s+length/,
    ["continuity/r1r2-against-length", "drop/over-limit"],
    (value) => `${Number(value) * 10} m`,
    "m",
  ),
  slip(
    "Ib ten times too great",
    /^\s+Ib/,
    ["design/load-over-device"],
    (value) => `${(Number(value) * 10).toFixed(1)} A`,
    "A",
  ),
  toWay("tested before it was installed", ["live/before-installation", "record/signed-out-of-order"], always, () =>
    replace(/^\s+(dead|live) 2026/, /2026-\d\d-\d\d/, "2026-02-01"),
  ),
  toWay("live before dead", ["live/before-dead"], always, () =>
    replace(/^\s+live 2026/, /2026-\d\d-\d\d/, "2026-03-02"),
  ),
  toAll("calibration of the instrument lapsed", ["instrument/calibration-lapsed"], always, () =>
    replace(/^\s+due/, /2026-11-03/, "2026-02-20"),
  ),
  toAll("tested before it was calibrated", ["instrument/test-before-calibration"], always, () =>
    replace(/^\s+calibrated/, /2025-11-03/, "2026-03-20"),
  ),
  toWay("instrument nobody knows", ["language/unknown-name"], always, () => replace(/^\s+dead/, /M1/, "M7")),
  toWay("no live tests at all", ["live/not-tested", "live/zs-missing"], always, withoutBlock("live")),
  toWay(
    "no dead tests at all",
    ["live/not-tested", "continuity/missing", "insulation/missing"],
    always,
    withoutBlock("dead"),
  ),
  toWay("Zs missing", ["live/zs-missing", "live/not-tested"], always, () => onLine(/^\s+Zs/, undefined)),
  {
    name: "the supply's combined earth on a berth or pitch",
    spoil(sheet, next) {
      if (!has(sheet, /earthing\s+TN-C-S/)) return undefined;
      return toWay(
        "",
        ["place/combined-earth"],
        ({ text }) => /place marina/.test(text),
        () => onLine(/^\s+earthing TT/, undefined),
      ).spoil(sheet, next);
    },
  },
  {
    name: "the supply's combined earth on a charging point outdoors",
    spoil(sheet, next) {
      if (!has(sheet, /earthing\s+TN-C-S/)) return undefined;
      return toWay(
        "",
        ["place/charger-combined-earth"],
        ({ text }) => /ev-charger/.test(text),
        () => onLine(/^\s+(earthing TT|open-PEN)/, undefined),
      ).spoil(sheet, next);
    },
  },
  {
    name: "feeder's device below the largest behind it",
    spoil(sheet, next) {
      return (
        toWay(
          "",
          ["coordination/feeder-below-circuit"],
          ({ kind, text }) => {
            const fed = /feeds (\w+)/.exec(text)?.[1];
            return kind === "feeder" && sheet.ways.some((way) => way.board === fed && figuresOf(way).rating > 10);
          },
          () => withRating(10),
        ).spoil(sheet, next) && {
          ...rewritten(sheet, sheet.ways.find(({ kind }) => kind === "feeder") as WayText, withRating(10)),
          from: 1,
          to: Number.POSITIVE_INFINITY,
          expected: ["coordination/feeder-below-circuit"],
        }
      );
    },
  },
  toWay(
    "feeder's device below its demand",
    ["design/load-over-device", "demand/over-device"],
    ({ kind }) => kind === "feeder",
    () => withRating(40),
  ),
  toWay(
    "phase sequence reversed",
    ["live/phase-sequence-reversed"],
    ({ text }) => /phase-sequence/.test(text),
    () => replace(/^\s+phase-sequence/, /ok/, "reversed"),
  ),
  toAll(
    "phase sequence not recorded",
    ["live/phase-sequence-missing"],
    (sheet) => has(sheet, /phases\s+three/),
    () => onLine(/^\s+phase-sequence/, undefined),
  ),
  toAll(
    "electrode of 400 Ω behind 300 mA",
    ["loop/electrode-over-limit", "loop/zs-over-rcd-limit"],
    (sheet) => isTT(sheet) && sheet.ways.some((way) => !isRcbo(way)),
    () =>
      together(
        replace(/^\s+electrode/, /rod [\d.]+ Ω/, "rod 400 Ω"),
        onLine(/^\s+(main-switch|rcd)\b/, (line) => line.replace("100 mA", "300 mA")),
      ),
  ),
  toAll(
    "two RCDs in a row without a delay",
    ["rcd/no-selectivity"],
    (sheet) => has(sheet, /61008.*delayed/) && sheet.ways.some(isRcbo),
    () => onLine(/^\s+main-switch/, (line) => line.replace(" delayed", "")),
  ),
  {
    name: "all single-phase ways on L1",
    spoil(sheet) {
      if (!has(sheet, /phases\s+three/) || has(sheet, /feeder/) || sheet.boards.length !== 1) return undefined;
      const single = sheet.ways.filter(({ text }) => /phase\s+L\d/.test(text)).map((way) => figuresOf(way).Ib);
      if (single.length < 3 || single.reduce((sum, Ib) => sum + Ib, 0) < 30) return undefined;
      const whole = { from: 0, to: sheet.lines.length - 1 };
      const edit = together(replace(/^\s+phase\s/, /L\d/, "L1"), replace(/^\s+diversity/, /[\d.]+ %/, "100 %"));
      return { ...rewritten(sheet, whole, edit), expected: ["demand/unbalanced"] };
    },
  },
  toWay(
    "no protective conductor",
    ["continuity/no-protective-conductor"],
    ({ text }) => /cpc [\d.]+ mm²/.test(text),
    () => replace(/^\s+cable/, /cpc [\d.]+ mm²/, "cpc-by none"),
  ),
  toWay("N/A against continuity", ["record/not-applicable", "continuity/missing"], always, () =>
    replace(/^\s+R1\+R2/, /[\d.]+ Ω/, "N/A"),
  ),
  toWay("a test left out on new work", ["record/limitation-on-new"], always, () =>
    replace(/^\s+Zs/, /[\d.]+ Ω/, 'LIM "Could not be reached"'),
  ),
  toAll(
    "supplementary bonding left out on a farm",
    ["place/bonding-not-stated", "place/bonding-omitted"],
    (sheet) => has(sheet, /place\s+agricultural/),
    () => onLine(/^\s+supplementary-bonding/, undefined),
  ),
  toWay(
    "enclosure too open for the place",
    ["place/ip-code-too-low"],
    // A pool asks for more by its zones, and plant may stand outside them all.
    ({ text }) => /ingress IP/.test(text) && !/place pool(?! zone)/.test(text),
    () => replace(/^\s+ingress/, /IP\w+/, "IP20"),
  ),
  toAll(
    "main switch below the demand",
    ["demand/over-main-switch"],
    (sheet) => (demandOn(sheet) ?? 0) > 27 && sheet.boards.length === 1 && has(sheet, /main-switch {2}BS EN 60947-3/),
    () => replace(/^\s+main-switch/, /100 A/, "25 A"),
  ),
  toWay(
    "type D in place of another, loop too great for it",
    ["loop/zs-over-limit", "loop/zs-over-cold-limit", "loop/relies-on-rcd", "loop/type-b-would-do"],
    (way, { curve, rating, Zs }, sheet) =>
      /[BC]/.test(curve ?? "") &&
      // Above 32 A five seconds are allowed, and a type D has a wider limit for them.
      rating <= 32 &&
      !isTT(sheet) &&
      !ownEarth(way) &&
      (Zs ?? 0) > (trips({ curve: "D", rating }) ?? 0) * 0.84,
    () => onLine(/^\s+device/, (line) => line.replace(/ [BC](\d+) /, " D$1 ")),
  ),
  toWay(
    "cable run through warm air, 55 °C",
    capacity.concat("design/ring-capacity"),
    (way, { Iz, rating, form }) =>
      Iz !== undefined &&
      form !== "armoured" &&
      way.kind !== "feeder" &&
      Iz * 0.62 < (isRing(way) ? 20 : rating) * 0.98,
    () => onLine(/^\s+route/, (line) => `${line} ambient 55 °C`),
  ),
  toAll("tails far below the cut-out", ["coordination/tails-below-cutout"], always, () =>
    replace(/^\s+tails/, /25 mm²/, "6 mm²"),
  ),
  toAll(
    "Ze not measured",
    ["record/supply-incomplete"],
    (sheet) => !isTT(sheet),
    () => onLine(/^\s+Ze\s/, undefined),
  ),
  toAll("neither fault current nor loop known", ["fault/current-missing", "record/supply-incomplete"], always, () =>
    onLine(/^\s+(Ipf|Ze|Zdb)\s/, undefined),
  ),
  toAll(
    "fault current a tenth of what the loop gives",
    ["fault/disagrees-with-loop", "fault/one-phase-figure"],
    (sheet) => !isTT(sheet),
    () =>
      onLine(/^ {4}Ipf\s/, (line) =>
        line.replace(/([\d.]+) kA/, (_, kA: string) => `${(Number(kA) / 10).toFixed(2)} kA`),
      ),
  ),
  toAll("earthing not said", ["record/supply-incomplete"], always, () => onLine(/^\s+earthing {2,}/, undefined)),
  toAll("earthing-conductor not said", ["protective/earthing-not-stated"], always, () =>
    onLine(/^\s+earthing-conductor\s/, undefined),
  ),
  toAll("bonding not said", ["protective/bonding-not-stated"], always, () => onLine(/^\s+bonding\s/, undefined)),
  toAll(
    "Zdb below Ze",
    ["loop/board-below-upstream"],
    (sheet) => !isTT(sheet) && has(sheet, /^\s+Zdb/),
    () => replace(/^\s+Zdb/, /[\d.]+ Ω/, "0.05 Ω"),
  ),
  toAll(
    "RCD of a board not tested",
    ["rcd/test-missing"],
    (sheet) => has(sheet, /^ {4}live /),
    () => {
      let within = false;
      return (line) => {
        if (/^ {4}live /.test(line)) within = true;
        if (!within) return line;
        if (line.trim() === "}") within = false;
        return [];
      };
    },
  ),
  toAll(
    "RCD of a board trips in 600 ms",
    ["rcd/time-over-limit"],
    (sheet) => has(sheet, /^ {4}live /),
    () => replace(/^ {6}rcd\s/, /1x \d+ ms/, "1x 600 ms"),
  ),
  toAll(
    "a second source that keeps up too little to open a breaker",
    ["loop/standby-over-limit"],
    (sheet) =>
      !isTT(sheet) &&
      !has(sheet, /main-switch.*61008/) &&
      sheet.ways.some((way) => !isRcbo(way) && !ownEarth(way) && way.kind !== "feeder"),
    () => onLine(/^ {4}U0\s/, (line) => `${line}\n    standby "Inverter" gives 12 A`),
  ),
  toAll(
    "a second source that feeds a fault harder than a device breaks",
    ["fault/standby-breaking-capacity"],
    (sheet) =>
      !has(sheet, /conditional-rating/) &&
      sheet.ways.some(({ text }) => /device +BS EN 6\d+ \w+ (?:6|10) kA/.test(text)),
    () => onLine(/^ {4}U0\s/, (line) => `${line}\n    standby "Turbine set" Ze 0.01 Ω Ipf 24 kA`),
  ),
  toWay(
    "one cable where the design has two in parallel",
    capacity,
    ({ text }, { Iz, rating }) => / parallel 2/.test(text) && Iz !== undefined && rating > (Iz / 2 / 0.8) * 1.01,
    () => replace(/^\s+cable/, / parallel 2/, ""),
  ),
  toWay(
    "conductors in parallel with a point along them",
    ["design/parallel-branched"],
    ({ text }) => / parallel 2/.test(text) && /^\s+length/m.test(text),
    (_, { length }) => onLine(/^\s+length/, () => `      run     Z ${length / 2} m J1 ${length / 2} m J2`),
  ),
  toWay(
    "a cable in the ground beside three others that nobody counted",
    capacity,
    // Four circuits that touch carry 0.6 of what one does: at most 0.66, by a tenth for what is remembered.
    ({ text }, { rating, line }) => /route +buried/.test(text) && line === "16" && rating > 94 * 0.66,
    () => replace(/^\s+route/, /soil 2 K·m\/W/, "grouped 4"),
  ),
  toWay(
    "busbar trunking that does not withstand the fault current",
    ["coordination/trunking-below-fault"],
    ({ text }) => / Icw 10 kA/.test(text),
    () => replace(/^\s+cable/, /Icw 10 kA/, "Icw 0.2 kA"),
  ),
  toWay(
    "busbar trunking rated below its device",
    capacity,
    ({ text }) => / carries 100 A/.test(text),
    () => replace(/^\s+cable/, /carries 100 A/, "carries 50 A"),
  ),
  toWay("device not said", ["record/no-device"], always, () => onLine(/^\s+device/, undefined)),
  toWay("cable not said", ["record/no-cable"], always, () => onLine(/^\s+cable/, undefined)),
  toWay(
    "breaking capacity not said",
    ["fault/breaking-capacity-missing"],
    ({ text }) => /device +BS EN 6.* kA/.test(text),
    () => replace(/^\s+device/, / \d+ kA/, ""),
  ),
];

type Least = Severity | ((spoilt: Spoilt) => Severity);

const linesOf = ({ text, from, to }: Spoilt): string =>
  text
    .split("\n")
    .slice(from - 1, to)
    .join("\n");

/** A 30 mA RCD disconnects where the overcurrent device does not, as 411.4.5 allows. */
const withRcd: Least = (spoilt) =>
  /device .* 30 mA|^\s+behind /m.test(linesOf(spoilt)) || /^\s+main-switch .* mA/m.test(spoilt.text)
    ? "warning"
    : "error";
const onPme: Least = ({ text }) => (/^\s+earthing\s+TN-C-S/m.test(text) ? "error" : "warning");

/**
 * What may be less than an error, by the reason: a reading or a word that contradicts another says that one of them is
 * wrong, not which; what is missing is no fault of the wiring; and what nothing requires flatly is guidance.
 */
const lesser: Readonly<Record<string, Least>> = {
  // Guidance: 525.202 advises, 80 % is a way to allow for heat, Appendix 15 informs, Tables 54.7 and 4D2A bow to a sum.
  "length tripled: loop or drop over the limit": "information",
  "Zs above the limit of a warm conductor": "warning",
  "spur off a spur": "warning",
  "earthing conductor too small": onPme,
  "tails far below the cut-out": "warning",
  "two RCDs in a row without a delay": "information",
  // Not certain: a demand is an estimate, a table's figure from memory is within its band of the limit.
  "cable 2 sizes down": "warning",
  "cut-out below the demand": "warning",
  "main switch below the demand": "warning",
  "all single-phase ways on L1": "information",
  // Protected still, by the device of the feeder or by an RCD.
  "feeder's device below the largest behind it": "warning",
  "Zs over the limit": withRcd,
  "type D in place of another, loop too great for it": "warning",
  // One of two figures is wrong, and nothing says which.
  "Ze above what the distributor declares": "warning",
  "length tripled on paper only": "warning",
  "conductors read twice what the length gives": "warning",
  "protective conductor two sizes smaller than the readings show": "warning",
  "Zs below the board's": "warning",
  "Zdb below Ze": "information",
  "ring's line 0.4 Ω above its neutral": "warning",
  "a poor joint at a point": "warning",
  "R1+R2 copied down the column": "warning",
  "trip times copied down the column": "warning",
  "R1+R2 in milliohms": "warning",
  "Zs ten times too great": "information",
  "trip time in seconds": "warning",
  "length ten times too great": "warning",
  "fault current a tenth of what the loop gives": "warning",
  "tested before it was installed": "warning",
  "live before dead": "warning",
  "calibration of the instrument lapsed": "warning",
  "tested before it was calibrated": "information",
  "R1+R2 missing": (spoilt) => (/^\s+at .*L-E/m.test(linesOf(spoilt)) ? "information" : "error"),
  // Not stated, so not known to be wrong.
  "Ze not measured": "warning",
  "neither fault current nor loop known": "warning",
  "R1+R2 known only to be below 99 Ω": "warning",
  "Ze known only to be below 20 Ω": "warning",
  "fault currents known only to be below 200 kA": "warning",
  "earthing not said": "warning",
  "earthing-conductor not said": "warning",
  "bonding not said": "warning",
  "supplementary bonding left out on a farm": "warning",
  "device not said": "warning",
  "cable not said": "warning",
  "breaking capacity not said": "warning",
};

const order: readonly Severity[] = ["information", "warning", "error"];

/** How grave the finding of a danger must be at least: an error, unless it is not certain or nothing requires it flatly. */
export function leastOf({ name }: Danger, spoilt: Spoilt): Severity {
  const least = lesser[name] ?? "error";
  return typeof least === "function" ? least(spoilt) : least;
}

/** The gravest of what speaks of a danger where it was put in; nothing where none does. */
export function gravest(
  { from, to, expected }: Spoilt,
  findings: readonly { readonly check: string; readonly line: number; readonly severity: string }[],
): Severity | undefined {
  const grades = findings
    .filter(({ check, line }) => expected.includes(check) && line >= from && line <= to)
    .map(({ severity }) => severity);
  return order.findLast((grade) => grades.includes(grade));
}

export const asGraveAs = (one: Severity, other: Severity): boolean => order.indexOf(one) >= order.indexOf(other);

/** Kinds the table names that there are none of: a name that was changed would leave its danger ungraded. */
export const unknownGrades = (): string[] =>
  Object.keys(lesser).filter((name) => !dangers.some((danger) => danger.name === name));
