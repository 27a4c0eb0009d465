import { describe, expect, it } from "vitest";
import { format } from "../../server/format/format.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject, type ProjectResult } from "../../server/workspace/project.ts";

const sources = { file: () => ({ failure: "there is no such file." }), resolve: (_: string, use: string) => use };

/** A tested installation with one circuit whose loop is too high, and departures at each level. */
function check({ way = "", board = "", supply = "", installation = "", Zs = "1.52" } = {}): ProjectResult {
  const text = `wayfile 1
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      existing
  ${installation}
  supply {
    earthing  TN-S
    Ze        0.30 Ω
    Ipf       1.2 kA
    ${supply}
  }
  board A "Front board" {
    fed-from  supply
    ${board}
    way 1 radial "Oven" {
      device  BS EN 60898 B32 6 kA
      ${way}
      live 2026-03-05 {
        Zs  ${Zs} Ω
      }
    }
    way 2 radial "Kiln" {
      device  BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs  ${Zs} Ω
      }
    }
  }
}
`;
  return checkProject(fileOfText("kiln.ways", text), sources);
}

const ids = (result: ProjectResult): string[] =>
  result.files.flatMap(({ findings }) => findings.map((finding) => finding.check));
const times = (result: ProjectResult, id: string): number => ids(result).filter((one) => one === id).length;
const over = "loop/zs-over-limit";
const unused = "record/departure-unused";

describe("a departure", () => {
  it("is not there: both circuits are reported", () => {
    expect(times(check(), over)).toBe(2);
  });

  it("suppresses one check by its id, in its own way only", () => {
    const result = check({ way: `departure ${over} "Old feeder, to be replaced in May"` });
    expect(times(result, over)).toBe(1);
    expect(times(result, unused)).toBe(0);
    const [quiet, ...others] = result.suppressed;
    expect(others).toEqual([]);
    expect(quiet?.finding.check).toBe(over);
    expect(quiet?.departure.reason).toBe("Old feeder, to be replaced in May");
    expect(quiet?.departure.way?.id).toBe("1");
  });

  it("suppresses by the regulation, and by a chapter above it", () => {
    expect(times(check({ way: 'departure 411.4.4 "Reason"' }), over)).toBe(1);
    expect(times(check({ way: 'departure 411.4 "Reason"' }), over)).toBe(1);
    const missing = check({ way: 'departure 411.3.3 "Reason"' });
    expect(times(missing, over)).toBe(2);
    expect(times(missing, unused)).toBe(1);
  });

  it("covers every way of its board, and of its installation", () => {
    for (const place of ["board", "installation"]) {
      const result = check({ [place]: `departure ${over} "Reason"` });
      expect(times(result, over)).toBe(0);
      expect(result.suppressed.filter(({ finding }) => finding.check === over)).toHaveLength(2);
    }
  });

  it("in the supply covers the supply and nothing else", () => {
    const result = check({ supply: `departure ${over} "Reason"` });
    expect(times(result, over)).toBe(2);
    expect(times(result, unused)).toBe(1);
  });

  it("counts where it stands nearest", () => {
    const result = check({
      way: `departure ${over} "Here"`,
      installation: `departure ${over} "Everywhere"`,
    });
    expect(
      result.suppressed
        .filter(({ finding }) => finding.check === over)
        .map(({ departure }) => departure.reason)
        .sort(),
    ).toEqual(["Everywhere", "Here"]);
    expect(times(result, unused)).toBe(0);
  });

  it("that suppresses nothing is reported with a fix that takes its line out", () => {
    const result = check({ way: `departure ${over} "Reason"`, Zs: "0.62" });
    const finding = result.files[0]?.findings.find(({ check: id }) => id === unused);
    expect(finding?.message).toContain("Nothing here departs from");
    const { segment } = finding?.spot ?? {};
    const [edit] = finding?.fixes[0]?.edits ?? [];
    expect(segment && edit && segment.text.slice(edit.start, edit.end)).toBe(`      departure ${over} "Reason"\n`);
  });

  it("by a former id still suppresses, and is pointed to with a safe fix that writes the present id", () => {
    const result = check({ way: 'departure record/no-use "Serves a bench that is not described"', board: "" });
    const suppressed = result.suppressed.map(({ finding }) => finding.check);
    expect(suppressed).toEqual(["record/serves-not-stated"]);
    expect(times(result, "record/serves-not-stated")).toBe(1);
    expect(times(result, unused)).toBe(0);
    const [renamed, ...others] = result.files.flatMap(({ findings }) =>
      findings.filter(({ check: id }) => id === "record/departure-renamed"),
    );
    expect(others).toEqual([]);
    expect(renamed?.message).toContain("record/no-use is called record/serves-not-stated now");
    expect(renamed?.severity).toBe("information");
    expect(renamed?.fixes).toMatchObject([{ safe: true, edits: [{ text: "record/serves-not-stated" }] }]);
  });

  it("by a former id that suppresses nothing is reported as that alone", () => {
    const result = check({ way: 'departure ring/legs-of-two-rings "Reason"' });
    expect(times(result, unused)).toBe(1);
    expect(times(result, "record/departure-renamed")).toBe(0);
  });

  it("of a whole file by a former id still suppresses", () => {
    const file = fileOfText(
      "kiln.ways",
      `wayfile 1
departure record/no-use "Not described in this file"
installation "Kiln house" {
  standard BS 7671:2018+A2:2022
  board A "Front board" {
    fed-from supply
    way 1 radial "Oven" {
      device BS EN 60898 B32 6 kA
    }
  }
}
`,
    );
    const result = checkProject(file, sources);
    expect(times(result, "record/serves-not-stated")).toBe(0);
    expect(times(result, "record/departure-renamed")).toBe(1);
  });

  it.each(["reason", "", " … "])("without its reason (%j) suppresses nothing, and is reported", (reason) => {
    const result = check({ way: `departure ${over} "${reason}"` });
    expect(times(result, over)).toBe(2);
    expect(times(result, "record/departure-without-reason")).toBe(1);
    expect(times(result, unused)).toBe(0);
    expect(result.suppressed).toEqual([]);
  });

  it("that names nothing known says so", () => {
    const result = check({ way: 'departure 999.9 "Reason"' });
    const finding = result.files[0]?.findings.find(({ check: id }) => id === unused);
    expect(finding?.message).toContain("No check here rests on 999.9");
  });

  it("cannot excuse the language", () => {
    const result = check({ way: 'behind east\n      departure language/unknown-name "Reason"' });
    expect(times(result, "language/unknown-name")).toBe(1);
    expect(result.suppressed.filter(({ finding }) => finding.check.startsWith("language/"))).toEqual([]);
    const finding = result.files[0]?.findings.find(({ check: id }) => id === unused);
    expect(finding?.message).toContain("No departure excuses language/unknown-name");
  });
});

it.each(["> 0", "<411", "-3", "−1"])("a sign before a number makes it no regulation: %s", (rule) => {
  const text = `wayfile 1\ndeparture ${rule} "Reason"\n`;
  const problems = [...fileOfText("a.ways", text).model.problems.values()].flat();
  expect(problems.map(({ check }) => check)).toContain("wrong-argument");
  expect(format(text)?.text ?? text).toContain(`departure ${rule} "Reason"`);
});
