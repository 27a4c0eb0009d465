import { readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { describe, expect, it } from "vitest";
import { format } from "../server/format/format.ts";
import { rules } from "../server/rules/list.ts";
import { Positions } from "../server/syntax/document.ts";
import type { Sources } from "../server/workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../server/workspace/loaded-file.ts";
import { checkProject } from "../server/workspace/project.ts";

const root = join(import.meta.dirname, "../examples");

/** Installations as they should be, and the one where every way has something wrong with it. */
const sound = [
  "alder-row/addition.ways",
  "alder-row/minor.ways",
  "fell-mill/mill.ways",
  "heron-wharf/boatyard.ways",
  "heron-wharf/net-loft.ways",
  "larkfield/cottage.ways",
  "millrace/bakery.ways",
  "orchard/cider-shed.ways",
  "quarry-bank/house.ways",
  "sallow-meadow/camp-site.ways",
  "tanner-row/shop.ways",
] as const;
const faulty = "copper-lane/hall-faulty.ways";
/** A periodic inspection of old work: what came later as a requirement is noted, and nothing else. */
const inspected = "alder-row/periodic.ways";
const parts = ["heron-wharf/workshop.ways", "shared/instruments.ways"];

const textOf = (name: string): string => readFileSync(join(root, name), "utf8");

const disk: Sources = {
  file: (path) => fileOfText(path, textOf(path)),
  resolve: (from, use) => normalize(join(dirname(from), use)),
};

function check(name: string) {
  const { files } = checkProject(fileOfText(name, textOf(name)), disk);
  return files.flatMap(({ file, findings }) => {
    const positions = new Positions(file.document);
    return findings.map(({ check, severity, message, spot }) => ({
      check,
      severity,
      message,
      file: file.path,
      line: positions.place(spot.segment, spot.start).line + 1,
    }));
  });
}

const waysIn = ({ model }: LoadedFile): number =>
  [...model.boards, ...model.installations.flatMap(({ boards }) => boards)].reduce(
    (sum, { ways }) => sum + ways.length,
    0,
  );

describe("the examples", () => {
  it.each([...sound, faulty, inspected, ...parts])("%s is laid out as the formatter writes it", (name) => {
    expect(format(textOf(name))?.edits ?? []).toEqual([]);
  });

  it.each(sound)("%s raises nothing", (name) => {
    expect(check(name)).toEqual([]);
  });

  it("a periodic inspection notes what its observations are of, and asks nothing of the circuit it sampled out", () => {
    const lines = textOf(inspected).split("\n");
    expect(
      check(inspected).map(
        ({ check, severity, line }) => `${severity} ${check}: ${lines[line - 1]?.trim().replace(/ +/g, " ")}`,
      ),
    ).toEqual([
      "information rcd/missing-for-sockets: serves sockets",
      "information rcd/missing-for-sockets: serves sockets",
      "information instrument/not-named: dead 1999-06-14 {",
      "information instrument/not-named: live 1999-06-14 {",
    ]);
  });

  it("hold sixty ways and more", () => {
    const names = [...sound, faulty, ...parts];
    const count = names.reduce((sum, name) => sum + waysIn(fileOfText(name, textOf(name))), 0);
    expect(count).toBeGreaterThanOrEqual(60);
  });

  it("show every family of checks, or its own samples do", () => {
    const shown = new Set(check(faulty).map(({ check }) => check.split("/")[0]));
    const families = [...new Set(rules.map(({ id }) => id.split("/")[0]))];
    const bare = families.filter(
      (family) =>
        !shown.has(family) && rules.some(({ id, examples }) => id.startsWith(`${family}/`) && !examples[0]?.bad),
    );
    expect(bare).toEqual([]);
    const atLeast = ["design", "diagnosis", "fault", "insulation", "live", "loop", "polarity", "protective", "rcd"];
    expect([...shown]).toEqual(expect.arrayContaining([...atLeast, "record", "ring", "language"]));
  });

  it("the faulty one is as faulty as it says, line by line", () => {
    const lines = textOf(faulty).split("\n");
    const found = check(faulty).map(
      ({ check, severity, line }) => `${severity} ${check}: ${lines[line - 1]?.trim().replace(/ +/g, " ")}`,
    );
    expect(found.join("\n")).toMatchInlineSnapshot(`
      "warning surge/not-stated: supply {
      warning fault/disagrees-with-loop: Ipf 6.8 kA
      error protective/bonding-too-small: bonding water 6 mm² continuity 0.02 Ω
      warning fault/disagrees-with-loop: Ipf 6.5 kA
      error rcd/time-over-limit: rcd stage 30 mA 1x 412 ms
      error fault/breaking-capacity-exceeded: device BS EN 60898 C32 6 kA
      information drop/over-limit: cable singles 70 °C line 6 mm² cpc 2.5 mm²
      error loop/zs-over-limit: Zs 0.89 Ω
      error design/device-over-capacity: device BS EN 60898 B32 10 kA
      error design/load-over-device: Ib 34.0 A
      error insulation/below-minimum: insulation 500 V L-N 0.6 MΩ L-E 350 MΩ N-E 412 MΩ
      warning ring/spur-off-spur: run X1 2 m X2
      error rcd/missing-for-sockets: serves sockets
      warning ring/ends-differ: ends r1 0.31 Ω rn 0.42 Ω r2 >99 Ω
      information diagnosis/readings-disagree: ends r1 0.31 Ω rn 0.42 Ω r2 >99 Ω
      error ring/open-conductor: ends r1 0.31 Ω rn 0.42 Ω r2 >99 Ω
      error polarity/wrong: at S3 L-N 0.16 Ω L-E 0.28 Ω polarity wrong
      error record/polarity-disagrees: polarity ok
      error language/unknown-word: cabel flat-twin line 1.5 mm² cpc 1.0 mm²
      error language/missing-unit: length 22
      error language/number-slip: R1+R2 0,66 Ω
      error language/wrong-unit: insulation 500 V L-N 310 Ω L-E >999 MΩ N-E >999 MΩ
      warning diagnosis/readings-disagree: R1+R2 3.11 Ω
      warning live/before-dead: live 2026-03-10 with M1 {
      warning loop/zs-below-board: Zs 0.15 Ω
      error rcd/test-button-failed: test-button failed
      error live/not-tested: way 6 radial "Organ blower" {
      error language/unknown-name: behind nave
      error language/limitation-without-reason: R1+R2 LIM
      error insulation/pair-missing: insulation 250 V L-N >999 MΩ L-E >999 MΩ
      warning insulation/test-voltage: insulation 250 V L-N >999 MΩ L-E >999 MΩ
      warning record/spare-in-use: Ib 4.0 A"
    `);
  });
});
