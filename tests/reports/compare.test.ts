/** Two versions of a schedule beside each other: what was recorded first, circuits by what they are, verdicts with their reasons. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { format } from "../../server/format/format.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { comparisonOf, isSame } from "../../server/reports/compare/comparison.ts";
import { comparisonReport } from "../../server/reports/compare/report.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const folder = "examples/heron-wharf/";
const boatyard = readFileSync(`${folder}boatyard.ways`, "utf8");
const workshop = readFileSync(`${folder}workshop.ways`, "utf8");
const loft = readFileSync(`${folder}net-loft.ways`, "utf8");
const instruments = readFileSync("examples/shared/instruments.ways", "utf8");

const installationOf = (...texts: readonly string[]) => {
  const [installation] = installationsOf(texts.map((text, index) => fileOfText(`${index}.ways`, text)));
  if (!installation) throw new Error("There is no installation.");
  return installation;
};
const yard = (board: string) => installationOf(boatyard, board, instruments);
const compared = (before: ReturnType<typeof installationOf>, after: ReturnType<typeof installationOf>) =>
  comparisonOf({ called: "before", installation: before }, { called: "after", installation: after });
const ofBoard = (change: (text: string) => string) => compared(yard(workshop), yard(change(workshop)));

const way = (number: string, kind: string, lines: string) => `way ${number} ${kind} {\n${lines}\n}`;

/** A change in the text of one way. */
const inWay =
  (id: string, change: (text: string) => string) =>
  (text: string): string => {
    const start = text.search(new RegExp(`^  way ${id} `, "m"));
    const end = text.indexOf("\n  }\n", start) + 5;
    return text.slice(0, start) + change(text.slice(start, end)) + text.slice(end);
  };
const replaced = (from: string | RegExp, to: string) => (text: string) => {
  const fresh = text.replace(from, to);
  if (fresh === text) throw new Error(`There is no ${from} to replace.`);
  return fresh;
};
const then =
  (...changes: readonly ((text: string) => string)[]) =>
  (text: string) =>
    changes.reduce((now, change) => change(now), text);
const retested = replaced(/\n {2}\}\n$/, "\n    live 2027-03-10 with M1 {\n      Zs  0.43 Ω\n    }\n  }\n");

type Of = ReturnType<typeof compared>;
const rowsOf = ({ places }: Of) =>
  places.flatMap(({ where, changes }) =>
    changes.map(({ kind, name, on, old, now }) => `${where} ${kind} ${name} ${on ?? ""}: ${old?.text} → ${now?.text}`),
  );
const placesOf = ({ places }: Of) =>
  places.map(({ where, was, state }) => [where, was, state].filter(Boolean).join(" "));
const findingsOf = ({ places }: Of) =>
  places.flatMap(({ where, findings }) => findings.map(({ kind, check }) => `${where} ${kind} ${check}`));

describe("a recorded reading", () => {
  it("that was altered is the first row, though a later one hides it", () => {
    const result = ofBoard(inWay("3", then(retested, replaced("Zs           0.42", "Zs           0.47"))));
    expect(rowsOf(result)).toEqual([
      "W/3 altered Zs 2026-03-06: 0.42 Ω → 0.47 Ω",
      "W/3 read Zs 2027-03-10: undefined → 0.43 Ω",
    ]);
    const [first] = comparisonReport(result).sections;
    expect(first?.title).toBe("Recorded readings that are not the same");
  });

  it("that vanished is as grave, and one of another unit is no change", () => {
    const result = ofBoard(
      then(
        inWay("3", then(retested, replaced(/ {4}live 2026[^}]*\}\n/, ""))),
        inWay("4", replaced("0.21 Ω", "210 mΩ")),
      ),
    );
    expect(rowsOf(result)).toEqual([
      "W/3 vanished Zs 2026-03-06: 0.42 Ω → undefined",
      "W/3 read Zs 2027-03-10: undefined → 0.43 Ω",
    ]);
    expect(result.places[0]?.gravity).toBe("record");
  });

  it("of an early test of a supply, that nothing else looks at, is compared as well", () => {
    const changed = loft.replace(">999 MΩ", "77 MΩ");
    const rows = rowsOf(compared(installationOf(loft, instruments), installationOf(changed, instruments)));
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatch(/altered .*: >999 MΩ → 77 MΩ/);
  });

  it("that was corrected with its reason is no alteration", () => {
    const result = ofBoard(
      inWay("3", replaced("Zs           0.42 Ω", 'Zs           0.47 Ω was 0.42 Ω "Figures turned round"')),
    );
    expect(rowsOf(result)[0]).toMatch(/^W\/3 corrected Zs 2026-03-06/);
    const false_ = ofBoard(
      inWay("3", replaced("Zs           0.42 Ω", 'Zs           0.47 Ω was 0.52 Ω "Figures turned round"')),
    );
    expect(rowsOf(false_)[0], "a correction of something else").toMatch(/^W\/3 altered/);
  });

  it.each([
    ["a bound", "Zs  <0.42 Ω"],
    ["a limitation", 'Zs  LIM "no access"'],
    ["a calculation", "Zs           0.42 Ω calculated"],
  ])("turned into %s is altered", (_, line) => {
    expect(rowsOf(ofBoard(inWay("3", replaced("Zs           0.42 Ω", line))))[0]).toMatch(/^W\/3 altered Zs/);
  });

  it("under another day, or struck out, is one row for its tests", () => {
    const later = ofBoard(inWay("3", replaced("dead 2026-03-04", "dead 2026-03-05")));
    expect(rowsOf(later)).toEqual(["W/3 re-dated tests 2026-03-05: dead 2026-03-04 with M1 → dead 2026-03-05 with M1"]);
    const out = ofBoard(
      inWay("3", replaced(/(dead 2026-03-04 with M1 \{\n)/, '$1      struck-out by "R.M." "Read on way 6"\n')),
    );
    expect(rowsOf(out)[0]).toMatch(/^W\/3 struck-out tests 2026-03-04/);
    expect(rowsOf(out)).toHaveLength(2);
  });
});

describe("a circuit", () => {
  const renumber = (ids: Readonly<Record<string, string>>) => (text: string) =>
    text.replace(/^ {2}way (\d+) /gm, (line, id: string) => (ids[id] ? `  way ${ids[id]} ` : line));

  it("that took another number is one row, and its readings are its own", () => {
    const result = ofBoard(renumber({ 7: "3", 3: "4", 4: "5", 5: "6", 6: "7" }));
    expect(rowsOf(result)).toEqual([]);
    expect(placesOf(result).sort()).toEqual([
      "W/3 W/7 stays",
      "W/4 W/3 stays",
      "W/5 W/4 stays",
      "W/6 W/5 stays",
      "W/7 W/6 stays",
    ]);
  });

  it("is itself in any order of the board", () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat({ max: 10_000 })), (dice) => {
        const [head = "", ...ways] = workshop.split(/(?=^ {2}way )/m);
        const last = ways.pop()?.replace(/\n\}\n?$/, "\n") ?? "";
        const shuffled = [...ways, last].map((way) => ({ way, by: dice.next().value as number }));
        const text = `${head}${shuffled
          .sort((a, b) => a.by - b.by)
          .map(({ way }) => way)
          .join("")}}\n`;
        expect(isSame(compared(yard(workshop), yard(text)))).toBe(true);
      }),
      { numRuns: 6 },
    );
  });

  it("is itself under any numbers", () => {
    const ids = [...workshop.matchAll(/^ {2}way (\d+) (?!spare)/gm)].map(([, id = ""]) => id);
    fc.assert(
      fc.property(fc.shuffledSubarray(ids, { minLength: ids.length, maxLength: ids.length }), (order) => {
        const result = ofBoard(renumber(Object.fromEntries(ids.map((id, index) => [id, order[index] ?? id]))));
        expect(rowsOf(result)).toEqual([]);
        expect(result.places.every(({ state, was }) => state === "stays" && was !== undefined)).toBe(true);
        expect(result.places).toHaveLength(ids.filter((id, index) => order[index] !== id).length);
      }),
      { numRuns: 8 },
    );
  });

  it("that went takes its readings with it, and says so", () => {
    const result = ofBoard(inWay("3", () => ""));
    expect(placesOf(result)).toContain("W/3 went");
    const went = result.places.find(({ state }) => state === "went");
    expect([went?.lost, went?.gravity]).toEqual([6, "record"]);
    expect(went?.content).toMatch(/^radial, BS EN 60898 C20 6 kA, singles/);
  });

  it("that took the number of another is another", () => {
    const result = ofBoard(
      inWay(
        "3",
        () =>
          '  way 3 radial "Kiln" {\n    device  BS EN 60898 B40 6 kA\n    length  31 m\n    serves  appliance\n  }\n',
      ),
    );
    // Nothing but the number is the same: the row says what changed, and the readings that went.
    expect(rowsOf(result).filter((row) => row.includes("vanished"))).toHaveLength(6);
  });
});

describe("a board", () => {
  it("that was renamed is one row", () => {
    const renamed = workshop
      .replace("board W ", "board K ")
      .replace(/\bW (?=\d)/g, "K ")
      .replace(/ W$/gm, " K");
    const result = compared(
      yard(workshop),
      installationOf(
        boatyard.replace("feeds        W", "feeds        K").replace(/feeds( +)W\b/, "feeds$1K"),
        renamed,
        instruments,
      ),
    );
    expect(rowsOf(result)).toEqual([]);
    expect(placesOf(result)).toContain("K W stays");
    expect(result.places.filter(({ of }) => of === "board")).toHaveLength(1);
    expect(reportText(comparisonReport(result))).toContain("1 board renamed");
  });

  it("is named where the way that feeds it still has the former name", () => {
    const renamed = workshop.replace("board W ", "board K ").replace(/\bW (?=\d)/g, "K ");
    const text = reportText(comparisonReport(compared(yard(workshop), yard(renamed))));
    expect(text).toMatch(/^feeds +W +still W$/m);
  });

  it("that went or came says how many of its ways are on another board", () => {
    const circuit = (number: number, title: string, size: string) =>
      `way ${number} radial "${title}" {\ncable multicore line ${size} mm² cpc ${size} mm²\nlength ${number + 11} m\nIb 9 A\ndead 2026-03-04 {\nR1+R2 0.${number}7 Ω\n}\n}\n`;
    const site = (main: string, annexe: string) =>
      installationOf(`wayfile 1
installation "Pottery" {
  standard BS 7671:2018+A2:2022
  board A "Main" {
${circuit(1, "Lights", "1.5")}${main}  }
${annexe}}
`);
    const annexe = `board B "Annexe" {\n${circuit(1, "Kiln", "10")}${circuit(2, "Fan", "2.5")}}\n`;
    const [two, one] = [site("", annexe), site(circuit(2, "Kiln", "10"), "")];
    const contents = (result: Of) => result.places.flatMap((place) => (place.where === "B" ? [place.content] : []));
    expect(contents(compared(two, one))).toEqual(["2 ways, 1 of them now on another board"]);
    expect(contents(compared(one, two))).toEqual(["2 ways, 1 of them from another board"]);
  });

  it("brings its ways as rows of one table", () => {
    const without = boatyard.replace(/^use "workshop.*$/m, "");
    const result = compared(installationOf(without, instruments), yard(workshop));
    const text = reportText(comparisonReport(result));
    expect(text).toMatch(/^New ways\n=+\nway +which +what it is\n[- ]+\nW\/1 +“Bench sockets, east wall” +ring, /m);
    expect(text).not.toContain("Way W/1");
  });
});

describe("what a departure hides", () => {
  const high = inWay("2", replaced("Zs           0.43 Ω", "Zs           1.43 Ω"));
  const departed = inWay("2", replaced(/\n {2}\}\n$/, '\n    departure 411.4.4 "ok"\n  }\n'));

  it("is suppressed and not gone, and the departure is a row", () => {
    const result = compared(yard(high(workshop)), yard(departed(high(workshop))));
    expect(findingsOf(result)).toEqual(["W/2 suppressed loop/relies-on-rcd", "W/2 suppressed loop/zs-disagrees"]);
    expect(rowsOf(result)).toEqual(['W/2 came departure 411.4.4 : undefined → "ok"']);
    const text = reportText(comparisonReport(result));
    expect(text).toMatch(/suppressed by departure/);
    expect(text).toContain("\n2 findings suppressed by a departure, not put right.\n1 way changed.\n");
    expect(text).toContain("Found before: 2 warnings; after: no errors or warnings and 2 suppressed.");
  });

  it("comes back when the departure goes", () => {
    const result = compared(yard(departed(high(workshop))), yard(high(workshop)));
    expect(findingsOf(result)).toEqual(["W/2 unsuppressed loop/relies-on-rcd", "W/2 unsuppressed loop/zs-disagrees"]);
  });
});

describe("a limit", () => {
  it("that moved with the device shows beside the reading that stayed", () => {
    const [place] = ofBoard(inWay("3", replaced("C20 6 kA", "C32 6 kA"))).places;
    const Zs = place?.changes.find(({ name }) => name === "Zs");
    expect([Zs?.kind, Zs?.old?.text, Zs?.now?.text]).toEqual(["limit", "0.42 Ω", "0.42 Ω"]);
    // BS 7671 Table 41.3: 1.09 Ω for a C20, 0.68 Ω for a C32; 80 % of them cold.
    expect([Zs?.old?.judged?.bound.value, Zs?.now?.judged?.bound.value]).toEqual([
      expect.closeTo(1.09 * 0.8, 1),
      expect.closeTo(0.68 * 0.8, 1),
    ]);
    expect(place?.changes[0]?.name).toBe("device");
  });

  it("that a reading now exceeds is a verdict, before all that is only stated", () => {
    const [place] = ofBoard(
      inWay("3", then(replaced("C20 6 kA", "C63 6 kA"), replaced(/length +17 m/, "length  18 m"))),
    ).places;
    expect(place?.changes.map(({ name, effect, gravity }) => [name, effect, gravity]).slice(0, 1)).toEqual([
      ["Zs", "now fails", "verdict"],
    ]);
  });
});

describe("what people say to each other", () => {
  const remark = (line: string) => inWay("3", replaced(/\n {2}\}\n$/, `\n    ${line}\n  }\n`));

  it.each(['query "Why C?"', 'note "Relabelled"', 'detail asset "P-3"'])("%s is a change like others", (line) => {
    expect(rowsOf(ofBoard(remark(line)))).toHaveLength(1);
  });

  it("is one row where it was worded anew", () => {
    const before = remark('note "Belt guard loose"')(workshop);
    const after = remark('note "Belt guard refitted"')(workshop);
    expect(rowsOf(compared(yard(before), yard(after)))).toEqual([
      'W/3 changed note : "Belt guard loose" → "Belt guard refitted"',
    ]);
  });

  it("and who signed is graver than what is stated", () => {
    const changed = boatyard.replace(/tested( +)by "[^"]+"/, 'tested$1by "X.Y."');
    const result = compared(yard(workshop), installationOf(changed, workshop, instruments));
    expect(result.places[0]?.changes[0]?.gravity).toBe("signature");
  });
});

describe("the same", () => {
  it.each([
    ["layout", (text: string) => text.replace(/ {2,}(?=\S)/g, "  ")],
    ["comments", (text: string) => text.replace(/^( *way )/gm, "  # a remark\n$1")],
    ["units by other names", (text: string) => text.replaceAll("MΩ", "Mohm").replaceAll("mm²", "mm2")],
    ["line ends", (text: string) => text.replaceAll("\n", "\r\n")],
    ["the formatter's order", (text: string) => format(text)?.text ?? text],
  ])("%s is no change", (_, change) => {
    expect(isSame(ofBoard(change))).toBe(true);
  });

  // Two ways of one name are a fault of the schedule, and the same one before and after.
  it.each([
    ["alike to the letter", way("42", 'radial "New"', "Ib 6 A"), way("42", 'radial "New"', "Ib 6 A")],
    ["of one number and title", way("42", 'radial "New"', "Ib 6 A"), way("42", 'radial "New"', "Ib 9 A")],
    ["of one number", way("42", "radial", ""), way("42", "radial", "")],
    ["of one number, both spare", "way 42 spare", "way 42 spare"],
  ])("a version with two ways that are %s is no other than itself", (_, one, other) => {
    const both = installationOf(`wayfile 1
installation "Kiln Yard" {
  board K "Kiln board" {
    fed-from supply
    ${one}
    ${other}
  }
}
`);
    expect(compared(both, both).places).toEqual([]);
  });

  it("is not said of lines that could not be read", () => {
    const result = ofBoard(inWay("3", replaced("Zs           0.42 Ω", "Zs           0.42")));
    expect(result.unread.after).toEqual(["Zs           0.42"]);
    const text = reportText(comparisonReport(result));
    expect(text).toContain("Not compared: lines that cannot be read");
    expect(text).toContain("Found before: no errors or warnings; after: 1 line that cannot be read.");
  });

  it("says how much was compared", () => {
    const result = ofBoard((text) => text);
    expect(result.compared.readings).toBeGreaterThan(100);
    expect(reportText(comparisonReport(result))).toContain(`${result.compared.readings} readings`);
  });
});
