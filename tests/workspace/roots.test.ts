import { describe, expect, it } from "vitest";
import { judgeFiles } from "../../server/results/files.ts";
import { UseGraph } from "../../server/workspace/use-graph.ts";
import type { Snapshot } from "../../server/workspace/workspace.ts";
import { Files } from "./files.ts";

const board = (device: string) => `wayfile 1
board B "Shared board" {
  fed-from     supply
  main-switch  BS EN 60947-3 100 A

  way 1 radial "Water heater" {
    device  ${device}
    cable   flat-twin line 2.5 mm² cpc 1.5 mm²
    serves  water-heater
  }
}
`;

const schedule = (title: string, Ipf: string) => `wayfile 1
use "shared.ways"
installation "${title}" {
  standard  BS 7671:2018+A2:2022
  stage     design
  work      new
  premises  commercial

  supply {
    earthing  TN-S
    Ze        0.30 Ω
    Ipf       ${Ipf}
  }
}
`;

const shared = {
  "shared.ways": board("BS EN 60898 B16 6 kA"),
  "a.ways": schedule("Slipway", "1.2 kA"),
  "b.ways": schedule("Boathouse", "9.5 kA"),
};

const messagesOf = ({ findings }: Pick<Snapshot, "findings">) => findings.map(({ message }) => message);

const tooWeak = "fault/breaking-capacity-exceeded";

describe("a file that two schedules use", () => {
  it("shows what either of them finds, and names the one that finds it", async () => {
    const files = new Files(shared);
    for (const name of Object.keys(shared)) files.open(name);
    const found = (await files.snapshot("shared.ways")).findings;
    const [only, ...others] = found.filter(({ check }) => check === tooWeak);
    expect(others).toEqual([]);
    expect(only?.severity).toBe("error");
    expect(only?.message).toMatch(/\(In “Boathouse”, b\.ways\.\)$/);
  });

  it("shows what both find once and names neither", async () => {
    const files = new Files(shared);
    files.open("shared.ways");
    const { findings } = await files.snapshot("shared.ways");
    const routes = findings.filter(({ check }) => check === "design/route-not-stated");
    expect(routes).toHaveLength(1);
    expect(routes[0]?.message).not.toContain("(In ");
  });

  it("is judged alike by the terminal", async () => {
    const files = new Files(shared);
    files.open("shared.ways");
    const { files: judged } = judgeFiles(files.all, files.disk);
    const there = judged.find(({ path }) => path === files.path("shared.ways"))?.findings ?? [];
    const here = (await files.snapshot("shared.ways")).findings;
    expect(here.map(({ message }) => message).sort()).toEqual(there.map(({ message }) => message).sort());
  });

  it("keeps a departure that only one of them needs", async () => {
    const device = "BS EN 60898 B16 6 kA";
    const text = board(device).replace(device, `${device}\n    departure ${tooWeak} "The old board stays"`);
    const files = new Files({ ...shared, "shared.ways": text });
    files.open("shared.ways");
    const { findings } = await files.snapshot("shared.ways");
    expect(findings.filter(({ check }) => [tooWeak, "record/departure-unused"].includes(check))).toEqual([]);
  });
});

describe("a snapshot that is asked late", () => {
  it("answers as of its time and leaves the newer one as it is", async () => {
    const files = new Files(shared);
    files.open("shared.ways");
    const early = await files.snapshot("shared.ways");
    const text = board("BS EN 60898 C63 6 kA");
    files.write("shared.ways", text);
    const newer = await files.snapshot("shared.ways");
    const late = early.findings;
    const afresh = async (ofShared: string) => {
      const other = new Files({ ...shared, "shared.ways": ofShared });
      other.open("shared.ways");
      return messagesOf(await other.snapshot("shared.ways"));
    };
    expect(messagesOf({ findings: late })).toEqual(await afresh(shared["shared.ways"]));
    expect(messagesOf(newer)).toEqual(await afresh(text));
    expect(messagesOf(newer)).not.toEqual(messagesOf({ findings: late }));
  });

  it("tells a run that it is outdated", async () => {
    const files = new Files(shared);
    files.open("a.ways");
    const run = (await files.snapshot("a.ways")).check();
    files.write("a.ways", schedule("Slipway", "2 kA"));
    expect(run.step(1)).toBe("outdated");
    expect(run.findings).toBeUndefined();
  });
});

describe("a run in steps", () => {
  it("finds what a run at once finds", async () => {
    const files = new Files(shared);
    files.open("shared.ways");
    const run = (await files.snapshot("shared.ways")).check();
    expect(run.step(1)).toBe("more");
    while (run.step(1) === "more");
    expect(run.step(1)).toBe("done");
    expect(run.checked).toBe(2);
    const other = new Files(shared);
    other.open("shared.ways");
    const whole = (await other.snapshot("shared.ways")).findings;
    expect(run.findings?.map(({ message }) => message)).toEqual(whole.map(({ message }) => message));
  });
});

describe("roots", () => {
  const graphOf = (files: Readonly<Record<string, readonly [holds: boolean, ...uses: string[]]>>): UseGraph => {
    const graph = new UseGraph();
    for (const [path, [hasInstallation, ...uses]] of Object.entries(files)) graph.set(path, { uses, hasInstallation });
    return graph;
  };

  it.each([
    ["its own", { a: [true] }, "a", ["a"]],
    ["that of its users", { a: [true, "s"], b: [true, "s"], s: [false] }, "s", ["a", "b"]],
    ["through others", { a: [true, "m"], m: [false, "s"], s: [false] }, "s", ["a"]],
    ["its own and that of its users", { a: [true, "b"], b: [true] }, "b", ["a", "b"]],
    ["one without an installation that nobody uses", { a: [false, "s"], s: [false] }, "s", ["a"]],
    ["one of a circle", { a: [false, "b"], b: [false, "a", "s"], s: [false] }, "s", ["a"]],
    ["itself, though it uses itself", { a: [false, "a"] }, "a", ["a"]],
  ] as const)("%s", (_, files, path, roots) => {
    expect(graphOf(files).rootsOf(path)).toEqual(roots);
  });

  it("of a file are those of all that reach it", () => {
    const graph = graphOf({ x: [false, "y"], y: [false, "x"], p: [true, "y"], q: [false, "q", "z"], z: [false] });
    expect(graph.roots).toEqual(["p", "q"]);
    expect(graph.rootsOf("x")).toEqual(["p"]);
    graph.delete("p");
    expect(graph.roots).toEqual(["q", "x"]);
    expect(graph.rootsOf("y")).toEqual(["x"]);
  });
});
