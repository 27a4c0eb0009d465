import { describe, expect, it } from "vitest";
import { fileOfText, type LoadedFile } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { find, fixed, marked } from "../helpers/find.ts";

const file = (boards: string, before = ""): string => `wayfile 1
${before}
installation "Kiln house" {
  standard BS 7671:2018+A2:2022
${boards}
}
`;
const board = (name: string, lines: string): string => `  board ${name} "Board ${name}" {\n${lines}\n  }`;

describe("names", () => {
  it.each([
    [
      "fed-from",
      file(`${board("Front", "fed-from supply")}\n${board("Rear", "fed-from Frnt")}`),
      "Frnt",
      "fed-from Front",
    ],
    [
      "the way that feeds a board",
      file(`${board("Front", "fed-from supply")}\n${board("Rear", "fed-from Front/2")}`),
      "Front/2",
      "fed-from Front",
    ],
    ["a board is not offered to itself", file(board("Front", "fed-from Frnt")), "Frnt", undefined],
    [
      "feeds",
      file(`${board("Front", 'fed-from supply\nway 1 feeder "x" { feeds Raer }')}\n${board("Rear", "fed-from Front")}`),
      "Raer",
      "feeds Rear",
    ],
    [
      "with",
      file(board("A", "fed-from supply\nlive 2026-03-05 with M2 {\nZdb 0.31 Ω\n}"), "instrument M1"),
      "M2",
      "with M1",
    ],
    [
      "cable",
      file(
        board("A", 'fed-from supply\nway 1 radial "x" { cable twni }'),
        "cable-type twin flat-twin line 2.5 mm² cpc 1.5 mm²",
      ),
      "twni",
      undefined,
    ],
    [
      "fused",
      file(board("A", 'fed-from supply\nway 1 radial "x" {\nrun A 4 m S1\nfused S2 3 A\n}')),
      "S2",
      "fused S1 3 A",
    ],
    [
      "rcd of a board test",
      file(
        board("A", "fed-from supply\nrcd east BS EN 61008 63 A 30 mA\nlive 2026-03-05 {\nrcd eat 30 mA 1x 24 ms\n}"),
      ),
      "eat",
      "rcd east 30 mA",
    ],
  ])("%s: nothing defines it, and the nearest is offered", (_, text, name, offered) => {
    const [finding, ...others] = find("language/unknown-name", text);
    expect(others).toEqual([]);
    expect(finding && marked(finding)).toBe(name);
    if (offered !== undefined) expect(finding && fixed(finding)).toContain(offered);
  });

  it("the supply, points without runs, and definitions of the installation need none", () => {
    const text = file(
      `instrument M1\n${board("A", 'fed-from supply\nway 1 ring "x" {\ndead 2026-03-04 with M1 {\nat S1 L-N 0.2 Ω\n}\n}')}`,
    );
    expect(find("language/unknown-name", text)).toEqual([]);
  });

  it("a name defined in a file that is used", () => {
    const files: Record<string, LoadedFile> = { "tools.ways": fileOfText("tools.ways", "wayfile 1\ninstrument M1\n") };
    const root = fileOfText(
      "root.ways",
      file(board("A", "fed-from supply\nlive 2026-03-05 with M1 {\nZdb 0.31 Ω\n}"), 'use "tools.ways"'),
    );
    const result = checkProject(root, {
      file: (path) => files[path] ?? { failure: "there is no such file." },
      resolve: (_, use) => use,
    });
    expect(result.files.flatMap(({ findings }) => findings.map(({ check }) => check))).not.toContain(
      "language/unknown-name",
    );
  });

  it("boards, ways, RCDs, instruments and cable types twice", () => {
    const text = file(
      [
        board(
          "A",
          "fed-from supply\nrcd east BS EN 61008 63 A 30 mA\nrcd east BS EN 61008 63 A 30 mA\nway 1 spare\nway 1 spare",
        ),
        board("A", "fed-from supply\nway 1 spare"),
      ].join("\n"),
      "instrument M1\ninstrument M1\ncable-type t flat-twin line 1 mm²\ncable-type t flat-twin line 1 mm²",
    );
    expect(find("language/duplicate-name", text).map(marked).sort()).toEqual(["1", "A", "M1", "east", "t"]);
  });
});

describe("feeders", () => {
  it("a circle of three is reported at each, a board behind it is not", () => {
    const text = file(
      [board("A", "fed-from C"), board("B", "fed-from A"), board("C", "fed-from B"), board("D", "fed-from A")].join(
        "\n",
      ),
    );
    const found = find("network/circular-feed", text);
    expect(found.map(marked)).toEqual(["fed-from C", "fed-from A", "fed-from B"]);
    expect(found[0]?.message).toContain("A, fed from C, fed from B, fed from A");
  });

  it("a board that feeds itself", () => {
    expect(find("network/circular-feed", file(board("A", "fed-from A")))).toHaveLength(1);
  });

  it("a feeder that could be meant is offered the board's name, where it stands in the same part of the file", () => {
    const text = file([board("A", 'fed-from supply\nway 1 feeder "Loft"'), board("B", "fed-from A")].join("\n"));
    expect(find("network/feeder-disagrees", text).map(marked)).toEqual(["A"]);
    const [finding] = find("network/feeder-without-feeds", text);
    expect(finding && fixed(finding)).toContain('way 1 feeder "Loft" {\n  feeds B\n}');
  });

  it("a board that a way feeds but that does not say so takes its name from the way", () => {
    const text = file(
      [board("A", 'fed-from supply\nway 1 feeder "x" { feeds B }'), board("B", "way 1 spare")].join("\n"),
    );
    const [finding] = find("network/board-supply-not-stated", text);
    expect(finding?.message).toContain("Way 1 of board A");
    expect(finding && fixed(finding)).toContain("fed-from A\n");
  });

  it("a second feeder is told of the first", () => {
    const text = file(
      [
        board("A", 'fed-from supply\nway 1 feeder "x" { feeds B }\nway 2 feeder "y" { feeds B }'),
        board("B", "fed-from A"),
      ].join("\n"),
    );
    expect(find("network/two-feeders", text)[0]?.related).toHaveLength(1);
  });
});
