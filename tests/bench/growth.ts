/**
 * How the cost of each part grows where a text doubles: `npm run bench:growth [part of a name]`. A measurement, not a test.
 * Each shape of a text (ways, points, tests, every word that may be repeated, every sample of a check) is made at 1, 2, 4
 * and 8 times a size; what grows faster than its text to the power of 1.2 is printed, with its processor time.
 */
import { type BlockKind, blockKinds, vocabulary } from "../../grammar/vocabulary.ts";
import { safeEdits } from "../../server/features/fix-all.ts";
import { inlayHints } from "../../server/features/inlay.ts";
import { lensPlaces, lensText } from "../../server/features/lenses.ts";
import { proposalEdits } from "../../server/features/proposal.ts";
import { reportOf } from "../../server/features/report.ts";
import { reportKinds } from "../../server/features/report-kinds.ts";
import { conversations } from "../../server/features/review.ts";
import { format } from "../../server/format/format.ts";
import { merge } from "../../server/merge/merge.ts";
import { comparisonOf } from "../../server/reports/compare/comparison.ts";
import { inspectionReport } from "../../server/reports/inspection/inspection.ts";
import { scheduleOf } from "../../server/reports/schedule/schedule.ts";
import { reportHtml } from "../../server/reports/setting/html.ts";
import { worksheet } from "../../server/reports/worksheet/worksheet.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { rules } from "../../server/rules/list.ts";
import { documentOf } from "../../server/syntax/document.ts";
import { viewKinds } from "../../server/views/kinds.ts";
import { viewOf } from "../../server/views/view.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject, type ProjectResult } from "../../server/workspace/project.ts";
import { openSample } from "../helpers/cursor.ts";
import { cursorAt, everyFeature, wholeFile } from "../helpers/every-feature.ts";
import { inSetting, unmark } from "../helpers/sample.ts";

const alone = (): Sources => ({ file: () => ({ failure: "there is no such file." }), resolve: (_, use) => use });
const check = (text: string): ProjectResult => checkProject(fileOfText("a.ways", text), alone());

const times = (count: number, make: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => make(index)).join("\n");

type Shape = readonly [name: string, base: number, make: (count: number) => string];

const opening =
  'wayfile 1\ninstrument M1 multifunction "Meter" {\n}\ninstallation "Growth" {\nstandard BS 7671:2018+A2:2022\nstage tested\nwork new\npremises commercial\nsupply {\nearthing TN-S\nU0 230 V\nZe 0.20 Ω\nIpf 1.4 kA\n}\n';
const board = (lines: string, name = "A", from = "supply"): string =>
  `board ${name} "Board" {\nfed-from ${from}\nmain-switch BS EN 60947-3 100 A\nZdb 0.22 Ω\n${lines}\n}\n`;
const inBoard = (lines: string): string => `${opening}${board(lines)}}\n`;
const device = "device BS EN 61009 B32 6 kA 30 mA type A\n";
const way = (lines: string, name: string | number = 1, head = device): string =>
  `way ${name} radial "Way" {\n${head}cable singles 70 °C line 2.5 mm² cpc 2.5 mm²\nroute conduit 25 mm method B\nlength 20 m\nserves sockets\n${lines}\n}`;
const inWay = (lines: string): string => inBoard(way(lines));
const day = (index: number): string => new Date(Date.UTC(1990, 0, 1 + index)).toISOString().slice(0, 10);

const ring = (points: number, spurs = 0): string =>
  inBoard(
    `way 1 ring "Ring" {\n${device}cable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C\nrun A ${times(points, (index) => `4 m S${index}`).replaceAll("\n", " ")} 4 m A\n${times(spurs, (index) => `run S${index} 3 m T${index}`)}\nserves sockets\ndead 2026-04-14 with M1 {\nends r1 0.30 Ω rn 0.30 Ω r2 0.50 Ω\n${times(points, (index) => `at S${index} L-N 0.15 Ω L-E ${index % 7 === 3 ? "0.45" : "0.19"} Ω polarity ok`)}\nR1+R2 0.25 Ω\n}\n}`,
  );
const radial = (points: number): string =>
  inBoard(
    `way 1 radial "Radial" {\n${device}cable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C\nrun A ${times(points, (index) => `4 m S${index}`).replaceAll("\n", " ")}\nserves sockets\ndead 2026-04-14 with M1 {\n${times(points, (index) => `at S${index} R1+R2 ${(0.05 * index + 0.1).toFixed(2)} Ω`)}\n}\n}`,
  );
const star = (points: number): string =>
  inBoard(
    `way 1 radial "Star" {\n${device}cable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C\n${times(points, (index) => `run A 4 m S${index}`)}\nserves sockets\ndead 2026-04-14 with M1 {\n${times(points, (index) => `at S${index} R1+R2 0.1${index % 10} Ω`)}\n}\n}`,
  );

const shapes: readonly Shape[] = [
  [
    "ways of a board",
    25,
    (count) =>
      inBoard(
        times(count, (index) =>
          way("Ib 12 A\ndead 2026-03-04 with M1 {\nR1+R2 0.31 Ω\n}\nlive 2026-03-05 with M1 {\nZs 0.6 Ω\n}", index + 1),
        ),
      ),
  ],
  [
    "ways of one number",
    25,
    (count) => inBoard(times(count, () => way("Ib 12 A\nlive 2026-03-05 with M1 {\nZs 0.6 Ω\n}"))),
  ],
  [
    "boards in a chain",
    8,
    (count) =>
      `${opening}${times(count, (index) => board(`way F feeder "On" {\n${device}cable singles 70 °C line 10 mm² cpc 10 mm²\nroute conduit 32 mm method B\nlength 5 m\n}\n${way("", 2)}`, `B${index}`, index === 0 ? "supply" : `B${index - 1}/F`))}}\n`,
  ],
  ["boards beside each other", 8, (count) => `${opening}${times(count, (index) => board(way(""), `B${index}`))}}\n`],
  [
    "boards in a circle",
    8,
    (count) =>
      `${opening}${times(count, (index) => board(`way F feeder "On" {\n${device}\n}`, `B${index}`, `B${(index + 1) % count}/F`))}}\n`,
  ],
  ["boards of one name", 8, (count) => `${opening}${times(count, () => board(way("")))}}\n`],
  ["points of a ring", 25, (count) => ring(count)],
  ["points of a ring with spurs", 12, (count) => ring(count, count)],
  ["points of a radial", 25, radial],
  ["points of a star", 25, star],
  [
    "days of tests",
    25,
    (count) =>
      inWay(
        times(
          count,
          (index) =>
            `dead ${day(index * 30)} with M1 {\nR1+R2 0.3${index % 10} Ω\ninsulation 500 V L-N 200 MΩ L-E 200 MΩ N-E 200 MΩ\n}\nlive ${day(index * 30 + 1)} with M1 {\nZs 0.6${index % 10} Ω\nrcd 30 mA 1x 2${index % 10} ms\n}`,
        ),
      ),
  ],
  ["tests of one day", 25, (count) => inWay(times(count, () => `live 2026-03-05 with M1 {\nZs 0.6 Ω\n}`))],
  [
    "instruments",
    50,
    (count) =>
      `${times(count, (index) => `instrument M${index + 2} multifunction "Meter" {\nserial "${index}"\ncalibrated 2026-01-02 until 2027-01-02\n}`)}\n`.replace(
        /^/,
        "wayfile 1\n",
      ) +
      inWay(times(count, (index) => `live ${day(index)} with M${index + 2} {\nZs 0.6 Ω\n}`)).replace("wayfile 1\n", ""),
  ],
  ["notes", 100, (count) => inWay(times(count, (index) => `note "Remark ${index}"`))],
  ["questions and answers", 50, (count) => inWay(times(count, (index) => `query "Why ${index}?"\nanswer "So"`))],
  [
    "departures",
    50,
    (count) => inWay(times(count, (index) => `departure ${rules[index % rules.length]?.id} "Reason ${index}"`)),
  ],
  [
    "cables of a conduit",
    25,
    (count) =>
      inBoard(
        `containment C1 conduit 32 mm length 6 m bends 2\n${times(count, (index) => way("", index + 1).replace("conduit 25 mm method B", "conduit 32 mm method B in C1"))}`,
      ).replace(board(""), board("")),
  ],
  [
    "conduits",
    25,
    (count) =>
      opening +
      times(count, (index) => `containment C${index} conduit 32 mm length 6 m bends 2`) +
      "\n" +
      board(
        times(count, (index) =>
          way("", index + 1).replace("conduit 25 mm method B", `conduit 32 mm method B in C${index}`),
        ),
      ) +
      "}\n",
  ],
  [
    "installations",
    12,
    (count) =>
      `wayfile 1\n${times(count, (index) => `installation "I${index}" {\nsupply {\nZe 0.2 Ω\n}\n${board(way(""))}}`)}\n`,
  ],
  ["comments", 200, (count) => inWay(times(count, (index) => `# remark ${index}`))],
  ["comments before all", 200, (count) => `${times(count, (index) => `# remark ${index}`)}\n${inWay("")}`],
  ["blank lines", 1000, (count) => inWay("\n".repeat(count))],
  ["words of a line", 200, (count) => inWay(`note ${"word ".repeat(count)}`)],
  ["numbers of a line", 200, (count) => inWay(`cable ${"2.5 mm² ".repeat(count)}`)],
  ["points in one run", 100, (count) => inWay(`run A ${"4 m S ".repeat(count)}`)],
  ["signs of a name", 2000, (count) => inBoard(way("", "1")).replace('"Way"', `"${"x".repeat(count)}"`)],
  ["signs of a word", 2000, (count) => inWay("x".repeat(count))],
  ["signs of a number", 2000, (count) => inWay(`length 1${"0".repeat(count)} m`)],
  ["signs of a board's name", 2000, (count) => inWay("").replace("board A", `board A${"x".repeat(count)}`)],
  ["quotes", 500, (count) => inWay(`note ${'"'.repeat(count)}`)],
  ["blanks in a line", 2000, (count) => inWay(`note${" ".repeat(count)}"x"`)],
  ["unknown words", 100, (count) => inWay(times(count, (index) => `leght${index} 20 m`))],
  ["unclosed boards", 100, (count) => times(count, () => "board A {")],
  [
    "unclosed ways",
    100,
    (count) => `${opening}board A {\n${times(count, (index) => `way ${index} radial "x" {\nlength 2 m`)}`,
  ],
  ["closing braces", 200, (count) => `${inWay("")}${"}\n".repeat(count)}`],
  ["braces of a line", 200, (count) => inWay("{ } ".repeat(count))],
  ["nested blocks", 100, (count) => inWay(`${"live 2026-03-05 {\n".repeat(count)}${"}\n".repeat(count)}`)],
  ["rubbish", 200, (count) => times(count, () => "x y z {")],
  [
    "marks of conflicts",
    50,
    (count) =>
      inWay(times(count, (index) => `<<<<<<< ours\nnote "a${index}"\n=======\nnote "b${index}"\n>>>>>>> theirs`)),
  ],
  ["supplies", 20, (count) => `${opening}${times(count, () => "supply {\nZe 0.2 Ω\n}")}\n${board(way(""))}}\n`],
  [
    "uses of files that are not there",
    50,
    (count) => inWay("").replace("wayfile 1\n", `wayfile 1\n${times(count, (index) => `use "${index}.ways"`)}\n`),
  ],
  ...oftenWords(),
  ...samples(),
];

/** Every word that may be repeated, as its example has it: once as it stands, once with another figure or name each. */
function oftenWords(): Shape[] {
  const places: Partial<Record<BlockKind, (lines: string) => string>> = {
    file: (lines) => inWay("").replace("wayfile 1\n", `wayfile 1\n${lines}\n`),
    installation: (lines) => `${opening}${lines}\n${board(way(""))}}\n`,
    supply: (lines) => inWay("").replace("Ze 0.20 Ω", `Ze 0.20 Ω\n${lines}`),
    board: inBoard,
    way: inWay,
  };
  const inTests = (kind: string) => (lines: string) => inWay(`${kind} 2026-03-05 with M1 {\n${lines}\n}`);
  const all = { ...places, dead: inTests("dead"), live: inTests("live") } as Readonly<
    Record<string, (lines: string) => string>
  >;
  return blockKinds.flatMap((kind) =>
    Object.entries(
      vocabulary[kind] as Readonly<Record<string, { readonly example: string; readonly opens?: string }>>,
    ).flatMap(([word, row]): Shape[] => {
      const place = all[kind];
      if (!place || word === "wayfile") return [];
      const line = (index: number): string => {
        const own = row.example.replace(/\d+/, (digits) => String(Number(digits) + index));
        return row.opens && !/\{/.test(own) ? `${own} {\n}` : own;
      };
      return [[`${kind}: ${word}`, 40, (count) => place(times(count, line))]];
    }),
  );
}

/** The ways of every sample of a check, as many times over. */
function samples(): Shape[] {
  return rules.flatMap((rule) =>
    rule.examples.slice(0, 1).flatMap(({ bad, setting }): Shape[] => {
      const lines = unmark(bad).text;
      if (/^\s*(wayfile|installation|instrument)\b/.test(lines)) return [];
      return [
        [
          `sample of ${rule.id}`,
          6,
          (count) =>
            inSetting(
              times(count, (index) =>
                lines.replace(
                  /^(\s*way )(\S+)/gm,
                  (_, head, name) => `${head}${index * 40 + (Number.parseInt(name, 10) || 1)}`,
                ),
              ),
              setting,
            ).text,
        ],
      ];
    }),
  );
}

type Part = readonly [name: string, prepare: (text: string) => Promise<() => unknown>];

const plain = (name: string, run: (text: string) => unknown): Part => [name, async (text) => () => run(text)];
const onInstallations = (
  name: string,
  run: (installation: ProjectResult["installations"][number]) => unknown,
): Part => [
  name,
  async (text) => {
    const { installations } = check(text);
    return () => installations.map(run);
  },
];
const onSnapshot = (
  name: string,
  run: (snapshot: Awaited<ReturnType<typeof openSample>>["snapshot"], text: string) => unknown,
): Part => [
  name,
  async (text) => {
    const { snapshot } = await openSample(text);
    void snapshot.findings;
    return () => run(snapshot, text);
  },
];

const parts: readonly Part[] = [
  plain("check", check),
  plain("division", documentOf),
  plain("layout", format),
  plain("merge", (text) => {
    const version = (one: string) => ({ text: one, bom: false });
    return merge({
      base: version(text),
      ours: version(text.replace(/\d(?=\D*$)/, "8").replaceAll("0.6", "0.7")),
      theirs: version(text.replaceAll("0.6", "0.8").replaceAll('"R', '"S')),
    });
  }),
  onInstallations("compare", (one) =>
    comparisonOf(
      { called: "a", installation: one },
      { called: "b", installation: check(lastText.replaceAll("0.6", "0.7")).installations[0] ?? one },
    ),
  ),
  onInstallations("worksheet", (one) => reportHtml(worksheet(one, { again: true }))),
  onInstallations("schedule", (one) => reportHtml(scheduleOf(one, { fill: "filled" }))),
  onInstallations("inspection", (one) => {
    const report = inspectionReport([one], checkInstallation(one).findings);
    return "failure" in report ? undefined : reportHtml(report);
  }),
  ...reportKinds.map((kind) =>
    onSnapshot(kind, (snapshot) => {
      const report = reportOf(snapshot, kind, undefined);
      return report && !("failure" in report) ? reportHtml(report) : undefined;
    }),
  ),
  ...viewKinds.map((kind) =>
    onSnapshot(`view ${kind}`, (snapshot) => {
      const [installation] = snapshot.projects[0]?.installations ?? [];
      const place = installation?.boards.at(-1);
      return installation && place
        ? viewOf(kind, { installations: [installation], installation, place }, snapshot.findings)
        : undefined;
    }),
  ),
  onSnapshot("lenses", (snapshot) => lensPlaces(snapshot).map(({ segment }) => lensText(snapshot, { segment }))),
  onSnapshot("hints", (snapshot) => inlayHints(snapshot, "both", () => true)),
  onSnapshot("threads", (snapshot) => conversations(snapshot)),
  onSnapshot("safe fixes", (snapshot) => safeEdits(snapshot)),
  onSnapshot("whole file", (snapshot) => wholeFile(snapshot)),
  onSnapshot("proposals", (snapshot) =>
    snapshot.file.document.segments.slice(-12).map((segment) => proposalEdits(snapshot, segment)),
  ),
  onSnapshot("at a place", (snapshot, text) => {
    for (const share of [0.1, 0.35, 0.6, 0.85, 0.97]) {
      const cursor = cursorAt(snapshot, text, Math.floor(text.length * share));
      if (cursor) everyFeature(snapshot, cursor);
    }
  }),
];

/** The text that is measured, for a part that needs another version of it. */
let lastText = "";

/** Processor ms of one run after which no larger text is made; growth that shows only beyond it is no matter. */
const most = 400;

/** The lesser of two runs, in this thread alone: what else runs on the machine only ever adds. */
async function costOf([, prepare]: Part, text: string): Promise<number> {
  lastText = text;
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 2; round++) {
    const run = await prepare(text);
    const before = process.threadCpuUsage();
    run();
    const { user, system } = process.threadCpuUsage(before);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

interface Cost {
  readonly size: number;
  readonly ms: number;
}

async function growth([, base, make]: Shape, part: Part): Promise<readonly Cost[]> {
  const costs: Cost[] = [];
  for (const factor of [1, 2, 4, 8, 16]) {
    const text = make(base * factor);
    costs.push({ size: text.length, ms: await costOf(part, text) });
    if ((costs.at(-1)?.ms ?? 0) > most) break;
  }
  return costs;
}

/** Of the last two doublings, where they cost enough to be told from chance. */
function exponentOf(costs: readonly Cost[]): number {
  const [last, first] = [costs.at(-1), costs.at(-3) ?? costs[0]];
  if (!last || !first || last.ms < 8 || first.ms === 0) return 1;
  return Math.log(last.ms / first.ms) / Math.log(last.size / first.size);
}

/** Of the hundreds of words and samples only what reads a text in another way each. */
const fewParts = /^(?:check|layout|merge|compare|working|whole file|at a place)$/;
const isOneOfMany = (name: string): boolean => /^sample of|^\w+: /.test(name);

const [wantedShape = "", wantedPart = ""] = process.argv.slice(2);
for (const part of parts) await costOf(part, inBoard(times(12, (index) => way("", index + 1))));
for (const shape of shapes.filter(([name]) => name.includes(wantedShape))) {
  for (const part of parts.filter(([name]) => name.includes(wantedPart))) {
    if (isOneOfMany(shape[0]) && !fewParts.test(part[0])) continue;
    const costs = await growth(shape, part);
    const exponent = exponentOf(costs);
    const shown = costs.map(({ ms }) => ms.toFixed(1)).join(" ");
    if (exponent > 1.2) console.log(`${exponent.toFixed(2)}  ${shape[0]}, ${part[0]}: ${shown} ms`);
  }
}
