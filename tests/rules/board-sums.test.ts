import { describe, expect, it } from "vitest";
import { find } from "../helpers/find.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { findingsOf } from "../helpers/sample.ts";

interface Around {
  readonly standard?: string;
  readonly work?: string;
  readonly premises?: string;
  readonly supply?: string;
}

const works = (boards: string, around: Around = {}) => `wayfile 1
installation "Joinery" {
  standard ${around.standard ?? "BS 7671:2018+A2:2022"}
  work ${around.work ?? "new"}
  premises ${around.premises ?? "industrial"}
  supply {
    ${around.supply ?? "earthing TN-S"}
  }
${boards}
}`;

const shared = (leaks: readonly string[], rating = "30 mA", extra = "") => `board A "Main" {
fed-from supply
rcd east BS EN 61008 63 A ${rating} type A ${extra}
${leaks.map((leak, index) => `way ${index + 1} radial "Desks" {\nbehind east\n${leak}\n}`).join("\n")}
}`;

describe("protective conductor currents behind an RCD", () => {
  const id = "rcd/leakage-too-high";

  it.each([
    [["leakage 4 mA", "leakage 5 mA"], 0],
    [["leakage 4 mA", "leakage 5.1 mA"], 1],
    // What is not stated can only add.
    [["leakage 4 mA", "leakage 5.1 mA", "Ib 3 A"], 1],
    [["leakage 4 mA", "Ib 3 A"], 0],
    [["Ib 3 A", "Ib 3 A"], 0],
    // A bound from below counts as at least so much, and one from above not at all.
    [["leakage >10 mA"], 1],
    [["leakage <10 mA"], 0],
    [['leakage LIM "Machine in use"', "leakage 3 mA"], 0],
  ])("%j: %i", (leaks, count) => {
    expect(find(id, works(shared(leaks)))).toHaveLength(count);
  });

  it("takes what leaks on a board behind it, though nothing is stated of another", () => {
    const behind = (name: string, lines: string) =>
      `board ${name} "Shop" {\nfed-from A\nway 1 radial "Desks" {\n${lines}\n}\n}`;
    const feeders = ["B", "C"].map((name, at) => `way ${at + 1} feeder "Shop" {\nbehind east\nfeeds ${name}\n}`);
    const main = `board A "Main" {\nfed-from supply\nrcd east BS EN 61008 63 A 30 mA type A\n${feeders.join("\n")}\n}`;
    const [found, ...others] = find(id, works([main, behind("B", "Ib 3 A"), behind("C", "leakage 10 mA")].join("\n")));
    expect(others).toEqual([]);
    expect(found?.message).toContain("is at least 10 mA, above 9 mA");
  });

  it("says value, limit and margin, and each circuit on its line, the worst first", () => {
    const [finding] = find(id, works(shared(["leakage 4 mA", "leakage 8 mA declared"])));
    expect(finding?.value?.amount).toBeCloseTo(0.012, 9);
    expect(finding?.limit?.amount).toBeCloseTo(0.009, 9);
    expect(finding?.margin).toBeCloseTo(-0.333, 3);
    expect(finding?.working).toContain("A/1 4 mA + A/2 8 mA = 12 mA");
    expect(finding?.related.map(({ message }) => message)).toEqual([
      "Way A/2: standing leakage 8 mA.",
      "Way A/1: standing leakage 4 mA.",
    ]);
    expect(finding?.source?.ref).toContain("531.3.2");
  });

  it("says that it is at least so much where one circuit says nothing of its own", () => {
    const message = (leaks: string[]) => find(id, works(shared(leaks)))[0]?.message;
    expect(message(["leakage 4 mA", "leakage 8 mA"])).toContain(") is 12 mA, above 9 mA (30 % of IΔn)");
    expect(message(["leakage 4 mA", "leakage 8 mA", "Ib 3 A"])).toContain(" is at least 12 mA, above 9 mA");
  });

  it("gives the next rating only where no person depends on this one, and no electrode", () => {
    const leaks = ["leakage 20 mA", "leakage 15 mA"];
    expect(find(id, works(shared(leaks, "30 mA")))[0]?.fixes).toEqual([]);
    expect(find(id, works(shared(leaks, "100 mA"), { supply: "earthing TT" }))[0]?.fixes).toEqual([]);
    const text = works(shared(leaks, "100 mA"));
    expect(find(id, text)[0]?.fixes.map(({ title }) => title)).toEqual(["Make it 300 mA"]);
    expect(foundBy(id, fixed(id, text))).toEqual([]);
  });

  it("counts over how many RCDs the circuits should go, and which is too much alone", () => {
    const message = (leaks: string[]) => find(id, works(shared(leaks)))[0]?.message;
    expect(message(["leakage 5 mA", "leakage 5 mA", "leakage 5 mA"])).toContain("between 2 RCDs");
    expect(message(["leakage 12 mA"])).toContain("Way A/1 alone exceeds it");
  });

  it("counts a whole board behind its feeder, unless the feeder states the sum itself", () => {
    const boards = (own: string) => `board A "Main" {
fed-from supply
way 1 feeder "Annexe" {
device BS EN 61009 C40 10 kA 100 mA type A
feeds B
${own}
}
}
board B "Annexe" {
fed-from A
way 1 radial "Desks" {
leakage 20 mA
}
way 2 radial "Lift" {
leakage 15 mA
}
}`;
    expect(find(id, works(boards("")))[0]?.value?.amount).toBeCloseTo(0.035, 9);
    expect(find(id, works(boards("leakage 24 mA")))).toEqual([]);
  });

  it("is asked from the 18th Edition on, and of older work noted only", () => {
    const text = shared(["leakage 4 mA", "leakage 8 mA"]);
    expect(find(id, works(text, { standard: "BS 7671:2008+A3:2015" }))).toEqual([]);
    expect(find(id, works(text, { standard: "BS 7671:2018" }))).toHaveLength(1);
    expect(find(id, works(text, { work: "existing" }))[0]?.severity).toBe("information");
  });
});

describe("much current in one protective conductor", () => {
  const id = "protective/high-conductor-current";
  const way = (kind: string, lines: string) =>
    works(`board A "Main" {\nfed-from supply\nway 1 ${kind} "Racks" {\n${lines}\n}\n}`);
  it.each([
    ["radial", "cable singles line 4 mm² cpc 4 mm²\nleakage 10 mA", 0],
    ["radial", "cable singles line 4 mm² cpc 2.5 mm²\nleakage 11 mA", 1],
    ["radial", "cable singles line 16 mm² cpc 10 mm²\nleakage 30 mA", 0],
    ["radial", "cable singles line 4 mm² cpc 2.5 mm²\nleakage 11 mA\nduplicate-cpc 2.5 mm²", 0],
    ["ring", "cable singles line 2.5 mm² cpc 2.5 mm²\nleakage 11 mA", 0],
    ["radial", "leakage 11 mA", 0],
    ["radial", "cable singles line 4 mm² cpc-by conduit\nleakage 11 mA", 0],
  ])("%s, %s: %i", (kind, lines, count) => {
    expect(find(id, way(kind, lines))).toHaveLength(count);
  });

  it("is put right by a second one, or by a large one", () => {
    const text = way("radial", "cable singles line 4 mm² cpc 2.5 mm²\nleakage 11 mA");
    for (const which of [0, 1]) expect(foundBy(id, fixed(id, text, which))).toEqual([]);
  });
});

const board = (lines: string, ways: readonly string[]) =>
  `board A "Main" {\nfed-from supply\n${lines}\n${ways.map((way, index) => `way ${index + 1} radial "Load" {\n${way}\n}`).join("\n")}\n}`;
const cutout = (rating: number) => ({ supply: `cutout BS 88-3 ${rating} A` });
const breaker = (rating: number) => `device BS EN 60898 B${rating} 6 kA`;

describe("what has no overload protection of its own", () => {
  it.each([
    // The cut-out guards them.
    ["busbar 100 A", 100, [32, 32, 63], []],
    // The devices behind them do.
    ["busbar 80 A", 100, [32, 32, 16], []],
    ["busbar 80 A", 100, [32, 32, 32], ["coordination/busbar-below-device"]],
    ["main-switch BS EN 60947-3 80 A", 100, [32, 32, 32], ["coordination/switch-below-device"]],
    ["main-switch BS EN 60947-3 80 A", 100, [32, 32], []],
    // A main breaker guards itself and what is behind it.
    ["main-switch BS EN 60947-2 80 A\nbusbar 80 A", 100, [32, 32, 32], []],
    ["main-switch BS EN 60898 63 A\nbusbar 50 A", 100, [32, 32], ["coordination/busbar-below-device"]],
  ])("%s behind %i A with %j: %j", (lines, fuse, ratings, checks) => {
    const text = works(board(lines, ratings.map(breaker)), cutout(fuse));
    expect(
      findingsOf(text)
        .map(({ check }) => check)
        .filter((check) => check.startsWith("coordination/")),
    ).toEqual(checks);
  });

  // Switches are made for 63 A, 80 A, 125 A and 160 A, and for no current between them; the largest that is kept is 800 A.
  it.each([
    ["63 A", [40, 25], "100 A", "come to 65 A. Fit 80 A, or"],
    ["125 A", [63, 63, 9], "200 A", "come to 135 A. Fit 160 A, or"],
    ["800 A", [500, 500], "1000 A", "come to 1000 A. Fit at least 1000 A, or"],
  ] as const)("a switch of %s for %j behind %s: %s", (rating, devices, cutout, words) => {
    const supply = `cutout BS 88-2 ${cutout}`;
    const text = works(board(`main-switch BS EN 60947-3 ${rating}`, devices.map(breaker)), { supply });
    const found = findingsOf(text).find(({ check }) => check === "coordination/switch-below-device");
    expect(found?.message).toContain(words);
  });

  it("nothing is said while what stands before it is not known", () => {
    const text = works(board("busbar 40 A\nrcd east BS EN 61008 40 A 30 mA type A", [`behind east\n${breaker(63)}`]));
    expect(findingsOf(text).filter(({ check }) => check.startsWith("coordination/"))).toEqual([]);
  });

  it("a three-phase board counts line by line, and a circuit without its line on each", () => {
    const id = "coordination/rcd-below-device";
    const ways = (third: string) => [
      `behind east\nphase L1\n${breaker(32)}`,
      `behind east\nphase L2\n${breaker(32)}`,
      `behind east\n${third}\n${breaker(32)}`,
    ];
    const text = (third: string) =>
      works(board("rcd east BS EN 61008 40 A 30 mA type A", ways(third)), {
        supply: "phases three\ncutout BS 88-3 100 A",
      });
    expect(find(id, text("phase L3"))).toEqual([]);
    expect(find(id, text(""))).toHaveLength(1);
    expect(find(id, text("phase L1"))[0]?.limit?.amount).toBe(64);
  });

  it("an RCD of a way is guarded by the way's own device", () => {
    const id = "coordination/rcd-below-device";
    const text = (rating: number) =>
      works(board("", [`${breaker(rating)}\nrcd BS EN 61008 40 A 30 mA type A`]), cutout(100));
    expect(find(id, text(32))).toEqual([]);
    expect(find(id, text(50))).toHaveLength(1);
  });

  it("diversity protected RCDs in earlier editions, which are asked and no more", () => {
    const id = "coordination/rcd-below-device";
    const ways = [32, 32, 16].map((rating) => `behind east\n${breaker(rating)}`);
    const of = (standard: string) =>
      find(id, works(board("rcd east BS EN 61008 63 A 30 mA type A", ways), { ...cutout(100), standard }))[0]?.severity;
    expect(of("BS 7671:2008+A3:2015")).toBe("information");
    expect(of("BS 7671:2018+A2:2022")).toBe("error");
  });

  it("what is drawn through an RCD is that of the circuits behind it, with their diversity", () => {
    const id = "demand/over-rcd";
    const ways = (share: string) => [`behind east\nIb 30 A`, `behind east\nIb 20 A\n${share}`, "Ib 60 A"];
    const text = (share: string) => works(board("rcd east BS EN 61008 40 A 30 mA type A", ways(share)));
    expect(find(id, text(""))[0]).toMatchObject({ severity: "information", value: { amount: 50 } });
    expect(find(id, text("diversity 50 %"))).toEqual([]);
    expect(foundBy(id, fixed(id, text("")))).toEqual([]);
  });
});

describe("single-phase circuits and boards on three lines", () => {
  const id = "demand/line-not-stated";
  const three = { supply: "phases three\ncutout BS 88-3 100 A" };
  const lodge = (lines: string) =>
    `board B "Lodge" {\nfed-from supply\nphases single\n${lines}\nway 1 radial "Heat" {\nIb 20 A\n}\n}`;

  it("are said once a board, and not where their load is not known", () => {
    expect(find(id, works(board("", ["Ib 10 A", "Ib 12 A", "phase L2\nIb 9 A"]), three))).toHaveLength(1);
    expect(find(id, works(board("", ["", "phase L2\nIb 9 A"]), three))).toEqual([]);
    expect(find(id, works(board("", ["Ib 10 A", "Ib 12 A"])))).toEqual([]);
  });

  it("what they come to on one line is shown beside what is calculated", () => {
    const [finding] = find(id, works(board("", ["phase L1\nIb 12 A", "Ib 30 A"]), three));
    expect(finding?.value?.amount).toBeCloseTo(42, 9);
    expect(finding?.message).toContain("22 A");
  });

  it("a line that is chosen is the one that carries least, and suppresses it", () => {
    const text = works(board("", ["phase L1\nIb 12 A", "phase L3\nIb 5 A", "Ib 30 A"]), three);
    expect(find(id, text)[0]?.fixes.map(({ title }) => title)).toEqual(["It is on L2", "It is on L3", "It is on L1"]);
    expect(foundBy(id, fixed(id, text))).toEqual([]);
    const boards = works(`${board("", ["phase L1\nIb 12 A"])}\n${lodge("")}`, three);
    expect(find(id, boards)[0]?.message).toContain("line of single-phase board B is not stated");
    expect(foundBy(id, fixed(id, boards))).toEqual([]);
  });

  it("nothing is said while the line is being typed", () => {
    const typed = (text: string) => findingsOf(text).filter(({ check }) => check === id);
    expect(typed(works(board("", ["Ib 10 A\nphase"]), three))).toEqual([]);
    expect(typed(works(lodge("phase"), three))).toEqual([]);
    expect(typed(works(lodge("phase L"), three))).toEqual([]);
  });

  it("a board is on the line its feeder names, and needs no word of its own", () => {
    const boards = (phase: string, own = "") => `board A "Main" {
fed-from supply
way 1 feeder "Lodge" {
feeds B
${phase}
}
}
board B "Lodge" {
fed-from A
phases single
${own}
way 1 radial "Heat" {
Ib 20 A
}
}`;
    expect(find(id, works(boards("phase L2"), three))).toEqual([]);
    expect(find(id, works(boards("", "phase L3"), three))).toEqual([]);
    expect(find(id, works(boards(""), three)).map(({ message }) => message)).toEqual([
      expect.stringContaining("is counted on every line"),
    ]);
  });
});

describe("the cut-out and what is fed from it", () => {
  const lights = "device BS EN 60898 B6 6 kA";
  const at = (cutout: string, devices: readonly string[], source = "") =>
    works(board("", devices), { supply: `earthing TN-S\n${source}\ncutout ${cutout}` });

  it.each([
    ["BS 88-3 100 A", ["device BS 88-2 63 A 80 kA gG", lights], 0],
    ["BS 88-3 100 A", ["device BS 88-2 80 A 80 kA gG", lights], 1],
    ["BS 88-2 63 A", ["device BS 88-2 40 A 80 kA gG", lights], 0],
    ["BS 88-3 80 A", ["device BS 88-3 80 A", lights], 1],
    ["BS 1361 60 A", ["device BS 1361 60 A", lights], 1],
    ["BS 1361 60 A", ["device BS 1361 45 A", lights], 0],
    ["BS 88-3 63 A", ["device BS EN 60898 C63 10 kA", lights], 1],
    ["BS 88-3 80 A", ["device BS 88-3 80 A"], 0],
  ])("%s over %j: %i", (cutout, devices, count) =>
    expect(find("coordination/no-selectivity", at(cutout, devices))).toHaveLength(count),
  );

  it("names who can change the fuse", () => {
    const pair = ["device BS 88-3 80 A", lights];
    const [asked] = find("coordination/no-selectivity", at("BS 88-3 80 A", pair));
    const [landlord] = find("coordination/no-selectivity", at("BS 88-3 80 A", pair, "source private"));
    expect([asked?.message, landlord?.message]).toEqual([
      expect.stringContaining("ask the distributor"),
      expect.stringContaining("ask the owner of the supply"),
    ]);
  });

  it("a device larger than the cut-out is a warning", () =>
    expect(find("coordination/feeder-below-circuit", at("BS 88-3 60 A", ["device BS 88-3 80 A", lights]))).toEqual([
      expect.objectContaining({ severity: "warning" }),
    ]));
});

describe("RCDs in a row, sources and surges", () => {
  it.each([
    ["100 mA type A delayed", 0],
    ["100 mA type A", 1],
    ["30 mA type A", 1],
  ])("an RCBO of 30 mA behind %s: %i", (main, count) => {
    const lines = `main-switch BS EN 61008 80 A ${main}`;
    const text = works(board(lines, ["device BS EN 61009 B32 6 kA 30 mA type A"]));
    expect(find("rcd/no-selectivity", text)).toHaveLength(count);
  });

  it("an RCD with many circuits behind it is named once", () => {
    const lines = "main-switch BS EN 61008 80 A 100 mA type A\nrcd east BS EN 61008 63 A 30 mA type A";
    const text = works(board(lines, ["behind east", "behind east", "behind east"]));
    expect(find("rcd/no-selectivity", text)).toHaveLength(1);
  });

  it("a source is asked about on breakers without residual current, and through one-way devices upstream", () => {
    const id = "rcd/unidirectional-with-source";
    const of = (device: string) => works(board("", [`${device}\nserves pv`]));
    expect(find(id, of("device BS EN 60898 B20 6 kA unidirectional"))).toHaveLength(1);
    expect(find(id, of("device BS EN 60898 B20 6 kA"))).toEqual([]);
    const main = (direction: string) =>
      works(
        board(`main-switch BS EN 61008 80 A 100 mA type A ${direction}`, ["device BS EN 60898 B20 6 kA\nserves pv"]),
      );
    expect(find(id, main("bidirectional"))).toEqual([]);
    expect(find(id, main("unidirectional"))).toHaveLength(1);
  });

  it("a source that has its RCD to itself shares nothing", () => {
    const rcd = "rcd east BS EN 61008 63 A 30 mA type A bidirectional";
    const of = (...ways: string[]) => find("rcd/source-shares-rcd", works(board(rcd, ways)));
    expect(of("behind east\nserves pv", "serves sockets")).toEqual([]);
    expect(of("behind east\nserves storage", "behind east\nserves pv")).toEqual([]);
    expect(of("behind east\nserves pv", "behind east\nserves sockets")).toHaveLength(1);
    const main = "main-switch BS EN 61008 80 A 300 mA type A delayed";
    const ways = ["serves pv", "serves sockets"];
    expect(find("rcd/source-shares-rcd", works(board(main, ways), { supply: "earthing TT" }))).toEqual([]);
    const both = `main-switch BS EN 61008 80 A 30 mA type A\n${rcd}`;
    const behind = ways.map((way) => `behind east\n${way}`);
    expect(find("rcd/source-shares-rcd", works(board(both, behind)))).toHaveLength(1);
  });

  it("surge protection left out wants a reason, by the words of the edition", () => {
    const id = "surge/omitted-without-reason";
    const of = (spd: string, standard = "BS 7671:2018+A2:2022") =>
      find(id, works('board A "Main" {\nfed-from supply\n}', { supply: `spd ${spd}`, standard }));
    expect(of("not-fitted")[0]?.message).toContain("the consequences of a surge");
    expect(of("not-fitted", "BS 7671:2018")[0]?.message).toContain("risk assessment");
    expect(of("not-fitted", "BS 7671:2001")).toEqual([]);
    expect(of('not-fitted ""')).toHaveLength(1);
    expect(of('not-fitted "Detached shed, nothing of worth"')).toEqual([]);
    expect(of("fitted")).toEqual([]);
  });
});

it("a board rated below the fault current as an assembly is asked about, whether that is recorded or calculated", () => {
  const id = "coordination/assembly-below-fault";
  const of = (lines: string, supply = "earthing TN-S") => find(id, works(board(lines, []), { supply }));
  expect(of("conditional-rating 10 kA\nIpf 12 kA")[0]).toMatchObject({ severity: "error" });
  expect(of("conditional-rating 16 kA\nIpf 12 kA")).toEqual([]);
  expect(of("conditional-rating 10 kA", "Ipf 12 kA")).toHaveLength(1);
  expect(of("conditional-rating 10 kA")).toEqual([]);
});
