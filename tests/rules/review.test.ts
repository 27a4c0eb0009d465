import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";
import { board, type Circuit, origin, tested, way } from "../helpers/tested-circuit.ts";

/**
 * Mistakes of judgement that a reader found in whole schedules, each named after what was seen. Everything the engine
 * says of the sample counts, so that one fault is told once.
 */

const earth: Setting = {
  ...tested,
  board: board.replace("Zdb 0.31 Ω\n", ""),
  supply: `earthing TT\nelectrode rod 84 Ω\nIpf 0.95 kA\n${origin}`,
};

const found = (circuit: Circuit | string, setting: Setting = tested) =>
  findingsOf(inSetting(typeof circuit === "string" ? circuit : way(circuit), setting).text).filter(
    // What explains several readings together stands beside what is wrong with each of them.
    ({ check }) => !check.startsWith("diagnosis/"),
  );
const ids = (circuit: Circuit | string, setting: Setting = tested): string[] =>
  found(circuit, setting).map(({ check, severity }) => `${severity} ${check}`);
const says = (circuit: Circuit | string, check: string, setting: Setting = tested): string | undefined =>
  found(circuit, setting).find((finding) => finding.check === check)?.message;

const rcd = "rcd 30 mA 1x 24 ms\ntest-button ok";
const ringEnds = "ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω";
const ring: Circuit = {
  kind: "ring",
  device: "BS EN 61009 B32 6 kA 30 mA type A",
  length: "length 60 m",
  more: "serves sockets\nIb 20 A",
  R1R2: "0.30 Ω",
  Zs: "0.62 Ω",
  live: rcd,
};
const points = "at S1 L-N 0.22 Ω L-E 0.30 Ω polarity ok\nat S2 L-N 0.23 Ω L-E 0.29 Ω polarity ok";

describe("what the sound ones are held against", () => {
  it.each([
    ["a radial", {}],
    ["a ring", { ...ring, dead: `${ringEnds}\n${points}` }],
  ] as const)("%s of these samples is silent as it stands", (_, circuit) => {
    expect(ids(circuit)).toEqual([]);
  });
});

describe("old work", () => {
  /** The 16th Edition is covered in part, and says so. */
  const inPart = "information record/edition-unverified";
  const old: Setting = { ...tested, work: "existing", standard: "BS 7671:2001" };
  const rewirable = { ...ring, device: "BS 3036 30 A", live: "", dead: `${ringEnds}\n${points}` };

  it("a ring of 2.5 mm² behind a rewirable fuse has its 20 A", () => {
    expect(ids(rewirable, old)).toEqual([inPart]);
  });

  it("a radial behind a rewirable fuse still counts for less, and says why", () => {
    const circuit = { device: "BS 3036 30 A", cable: "flat-twin line 4 mm² cpc 1.5 mm²", R1R2: "0.33 Ω", Zs: "0.65 Ω" };
    expect(says(circuit, "design/device-over-capacity", old)).toContain("with a rewirable fuse");
  });

  it("what a fuse can break is asked about where it is only taken from its standard", () => {
    const strong = {
      ...old,
      board: board.replace("0.9 kA", "1.2 kA"),
      supply: tested.supply?.replace("0.95", "1.3") ?? "",
    };
    expect(ids(rewirable, strong).toSorted()).toEqual([inPart, "warning fault/breaking-capacity-exceeded"]);
    expect(says(rewirable, "fault/breaking-capacity-exceeded", strong)).toContain("read its marking");
    expect(ids({ ...rewirable, device: "BS 3036 30 A 1 kA" }, strong)).toContain(
      "error fault/breaking-capacity-exceeded",
    );
  });

  it("the sockets of a ring are 13 A, and needed an RCD in 2008 though the device is 32 A", () => {
    const circuit = { ...ring, device: "BS EN 60898 B32 6 kA", live: "", dead: `${ringEnds}\n${points}` };
    const of2008 = { ...tested, standard: "BS 7671:2008" };
    expect(ids(circuit, of2008)).toContain("error rcd/missing-for-sockets");
    expect(ids(circuit, { ...of2008, work: "existing" })).toEqual(["information rcd/missing-for-sockets"]);
    expect(ids(circuit, old)).toEqual([inPart]);
  });

  it("a limit stricter than the edition of the work is no mistake", () => {
    const circuit = {
      device: "BS EN 60898 B32 6 kA",
      cable: "flat-twin line 4 mm² cpc 1.5 mm²",
      R1R2: "0.33 Ω",
      Zs: "0.64 Ω",
    };
    const more = "serves cooker\nIb 20 A\nmax-Zs 1.37 Ω";
    expect(ids({ ...circuit, more }, { ...old, standard: "BS 7671:2008" })).toEqual([]);
    const loose = { ...circuit, more: more.replace("1.37", "1.44") };
    expect(says(loose, "loop/max-zs-wrong")).toContain("before Cmin was brought in");
  });
});

describe("RCDs", () => {
  it("a cooker's switch with a socket is a 13 A socket on a 40 A circuit", () => {
    const circuit = {
      device: "BS EN 60898 B40 6 kA",
      cable: "flat-twin line 10 mm² cpc 4 mm²",
      R1R2: "0.13 Ω",
      Zs: "0.46 Ω",
    };
    expect(ids({ ...circuit, more: "serves cooker sockets\nIb 20 A" })).toEqual(["error rcd/missing-for-sockets"]);
    expect(ids({ ...circuit, more: "serves sockets\nIb 20 A" })).toEqual([]);
  });

  it("sockets whose device is not written yet are not said to lack an RCD", () => {
    expect(says('way 1 ring "Sockets" {\nserves sockets\n}', "rcd/missing-for-sockets")).toBeUndefined();
  });

  it("the 55 V sockets of a site need none", () => {
    const site = {
      ...tested,
      supply: `earthing TN-S\nU0 55 V\nZe 0.05 Ω\nIpf 0.95 kA\n${origin}`,
      board: board.replace("0.31", "0.06"),
    };
    const circuit = { device: "BS EN 60898 B16 6 kA", more: "serves sockets\nIb 10 A", Zs: "0.46 Ω" };
    expect(says(circuit, "rcd/missing-for-sockets", site)).toBeUndefined();
  });

  it("45 ms at five times is too slow, told once", () => {
    const live = "rcd 30 mA 1x 24 ms\nrcd 30 mA 5x 45 ms\ntest-button ok";
    expect(ids({ device: "BS EN 61009 B16 6 kA 30 mA type A", live })).toEqual(["error rcd/time-over-limit"]);
  });

  it("a test without the RCD's name is asked about once, not as two that are missing", () => {
    const two = `${board}\nrcd r1 BS EN 61008 63 A 30 mA type A\nrcd r2 BS EN 61008 63 A 30 mA type A
live 2026-03-05 with M1 {\nrcd 30 mA 1x 23 ms\ntest-button r1 ok\ntest-button r2 ok\n}`;
    expect(ids({ more: "behind r1\nserves sockets\nIb 10 A" }, { ...tested, board: two })).toEqual([
      "warning rcd/test-unnamed",
    ]);
  });
});

describe("loops", () => {
  it("off scale below the limit proves nothing", () => {
    const circuit = { device: "BS EN 60898 B32 6 kA", cable: "flat-twin line 4 mm² cpc 1.5 mm²", R1R2: "0.33 Ω" };
    const more = "serves cooker\nIb 20 A";
    expect(ids({ ...circuit, more, Zs: ">1.00 Ω" })).toEqual(["warning loop/zs-over-limit"]);
    expect(ids({ ...circuit, more, Zs: ">20 Ω" })).toEqual(["error loop/zs-over-limit"]);
    expect(says({ ...circuit, more, Zs: ">20 Ω" }, "loop/zs-over-limit")).toContain("Zs >20 Ω is above 1.37 Ω");
    const device = "BS EN 61009 B16 6 kA 30 mA type A";
    expect(ids({ device, Zs: ">20 Ω", live: rcd }, earth)).toEqual(["warning loop/zs-over-rcd-limit"]);
  });

  it("a reading behind an electrode is repeated as it was written", () => {
    const circuit = {
      device: "BS EN 61009 B16 6 kA 100 mA type A",
      Zs: "584.6 Ω",
      live: "rcd 100 mA 1x 24 ms\ntest-button ok",
    };
    expect(says(circuit, "loop/zs-over-rcd-limit", earth)).toContain("Zs 584.6 Ω is above 500 Ω");
  });

  it("an R1+R2 that cannot be right is told once, and Zs is not blamed for it", () => {
    expect(ids({ R1R2: "3.90 Ω" })).toEqual(["warning continuity/r1r2-against-length"]);
    expect(ids({ R1R2: "0.00 Ω" })).toEqual(["error continuity/negative-or-zero"]);
    expect(ids({ ...ring, R1R2: "1.17 Ω", dead: `${ringEnds}\n${points}` })).toEqual([
      "warning ring/r1r2-against-ring",
    ]);
  });

  it("a high R1+R2 that Zs bears out is still followed by a Zs that is higher yet", () => {
    expect(ids({ R1R2: "0.80 Ω", Zs: "1.60 Ω" })).toContain("warning loop/zs-disagrees");
  });

  it("an IT system is not passed over in silence", () => {
    const supply = `earthing IT\nZe 20 Ω\nIpf 0.95 kA\n${origin}`;
    expect(ids({}, { ...tested, supply })).toContain("warning loop/it-system-not-checked");
  });
});

describe("rings", () => {
  it("a cut cable is one finding, not four", () => {
    const circuit = { ...ring, dead: "ends r1 >99 Ω rn >99 Ω r2 >99 Ω", R1R2: "0.70 Ω", Zs: "1.01 Ω" };
    expect(ids(circuit)).toEqual(["error ring/open-conductor"]);
    expect(says(circuit, "ring/open-conductor")).toContain("Line, neutral and protective conductor");
  });

  it("an open line does not make R1+R2 wrong for its length", () => {
    const dead = "ends r1 >99 Ω rn 0.44 Ω r2 0.73 Ω\nat S1 L-N 0.44 Ω L-E 0.70 Ω polarity ok";
    expect(ids({ ...ring, dead, R1R2: "0.70 Ω", Zs: "1.01 Ω" })).toEqual(["error ring/open-conductor"]);
  });
});

describe("a way that is only begun", () => {
  it.each(["way 1", 'way 1 radial "Heater"', 'way 1 ring "Sockets" {\n}'])(
    "%s misses its device, not nine things",
    (text) => {
      const record = ["warning record/no-device", "warning record/no-description", "warning record/no-kind"];
      expect(ids(text).filter((id) => !record.includes(id))).toEqual([]);
      expect(ids(text)).toContain("warning record/no-device");
    },
  );
});

describe("sentences", () => {
  it("a test that was left out is named as a person names it", () => {
    const circuit = { device: "BS EN 61009 B16 6 kA 30 mA type A", live: 'rcd 30 mA 1x LIM "Freezer"\ntest-button ok' };
    expect(says(circuit, "record/limitation-on-new")).toContain("the test of the RCD before");
  });

  it("nobody is asked to measure the earthing arrangement", () => {
    const supply = `Ze 0.30 Ω\nIpf 0.95 kA\n${origin}`;
    expect(says({}, "record/supply-incomplete", { ...tested, supply })).toContain("inspect the earthing at the origin");
  });
});

describe("off scale", () => {
  it("a fault current above the meter's range is more than a 6 kA device breaks", () => {
    expect(ids({}, { ...tested, board: board.replace("0.9 kA", ">20 kA") })).toEqual([
      "error fault/breaking-capacity-exceeded",
    ]);
  });

  it("an origin without an earth is not passed over because its Ze has no figure", () => {
    expect(ids({}, { ...tested, supply: tested.supply?.replace("0.30 Ω", ">20 Ω") ?? "" })).toContain(
      "error loop/ze-above-declared",
    );
  });

  it("an electrode off scale is too high once, and not merely unstable", () => {
    const supply = earth.supply?.replace("84 Ω", ">2000 Ω") ?? "";
    const circuit = { device: "BS EN 61009 B16 6 kA 30 mA type A", Zs: ">2000 Ω", live: rcd };
    expect(ids(circuit, { ...earth, supply })).toEqual([
      "error loop/electrode-over-limit",
      "error loop/zs-over-rcd-limit",
    ]);
    expect(says(circuit, "loop/electrode-over-limit", { ...earth, supply })).toContain("RA >2000 Ω");
  });
});

describe("what was passed over", () => {
  it("a feeder of a TT installation behind no RCD", () => {
    const kind = "feeder";
    const cable = "armoured 90 °C line 6 mm² cpc 6 mm²";
    const circuit = { kind, cable, device: "BS EN 60898 B32 6 kA", more: "Ib 10 A", R1R2: "0.13 Ω", Zs: "84.1 Ω" };
    // Through 84 Ω a B32 does not open at all; where the loop would open it, an overcurrent device is allowed (411.5.2).
    expect(ids(circuit, earth)).toContain("error rcd/missing-in-tt");
    expect(says(circuit, "rcd/missing-in-tt", earth)).toContain("Through 84.1 Ω its device would not open at all.");
    const low = { ...circuit, Zs: "0.9 Ω" };
    expect(ids(low, { ...earth, supply: earth.supply?.replace("84 Ω", "0.8 Ω") ?? "" })).toContain(
      "warning rcd/missing-in-tt",
    );
    const delayed = "BS EN 61008 100 A 100 mA type A delayed";
    expect(ids(circuit, { ...earth, board: earth.board?.replace("BS EN 60947-3 100 A", delayed) ?? "" })).not.toContain(
      "error rcd/missing-in-tt",
    );
  });

  it("line and cpc that have changed places are one finding", () => {
    expect(ids({ R1R2: "0.39 Ω\nR2 0.15 Ω" })).toEqual([
      "warning continuity/r2-ratio",
      "information continuity/both-recorded",
    ]);
  });

  it("an R2 too low for its length is one finding", () => {
    expect(ids({ R1R2: "0.39 Ω\nR2 0.03 Ω" })).toEqual([
      "warning continuity/r2-against-length",
      "information continuity/both-recorded",
    ]);
  });

  it("ground colder than the tables assume does not leave a cable unjudged", () => {
    const circuit = {
      device: "BS EN 60898 B32 6 kA",
      cable: "armoured 90 °C line 6 mm² cpc 6 mm²",
      route: "buried method D ambient 15 °C",
      more: "serves heating\nIb 26 A",
      R1R2: "0.13 Ω",
      Zs: "0.44 Ω",
    };
    expect(ids(circuit)).toEqual([]);
    expect(says({ ...circuit, route: "buried method D ambient 65 °C" }, "design/capacity-not-calculated")).toContain(
      "no table here gives the ground factor at 65 °C",
    );
  });

  it("warmer ground takes its share of what the cable carries", () => {
    const circuit = {
      device: "BS EN 60898 B45 6 kA",
      cable: "armoured 90 °C line 6 mm² cpc 6 mm²",
      more: "serves heating\nIb 40 A",
      R1R2: "0.13 Ω",
      Zs: "0.44 Ω",
    };
    // 53 A of Table 4E4A: 47.7 A behind its device at 20 °C, and by 0.93 at 30 °C, of 49.29 A, 44.36 A.
    const found = (degrees: number) =>
      says({ ...circuit, route: `buried method D ambient ${degrees} °C` }, "design/device-over-capacity");
    expect(found(20)).toBeUndefined();
    expect(found(30)).toContain("44.4 A");
  });

  it("a schedule without its earthing does not ask for the cpc as well", () => {
    const supply = `Ze 0.30 Ω\nIpf 0.95 kA\n${origin}`;
    expect(says({}, "design/cpc-too-small", { ...tested, supply })).toBeUndefined();
  });
});

describe("boards behind a feeder", () => {
  const circuit = way({ device: "BS EN 60898 B20 6 kA", more: "serves sockets\nIb 12 A", Zs: "0.70 Ω" });
  const installation = ({ device = "BS 88-2 40 A 80 kA gG", from = "A", Zdb = "0.31 Ω", live = "" }) =>
    inSetting(
      `way 1 feeder "Loft" {
device ${device}
cable armoured 90 °C line 10 mm² cpc 10 mm² cores 3
route clipped method C
length 30 m
feeds B
Ib 20 A
dead 2026-03-04 with M1 {
R1+R2 0.11 Ω
insulation 500 V L-N >999 MΩ L-E 500 MΩ N-E 700 MΩ
polarity ok
}
live 2026-03-05 with M1 {
Zs 0.31 Ω
${live}
}
}
}
board B "Loft" {
fed-from ${from}
main-switch BS EN 60947-3 100 A
spd not-fitted "At the origin"
polarity ok
Zdb ${Zdb}
Ipf 0.4 kA
${circuit}`,
      {
        ...tested,
        board: board.replace("Zdb 0.31 Ω", "Zdb 0.19 Ω"),
        supply: tested.supply?.replace("0.30 Ω", "0.18 Ω") ?? "",
      },
    ).text;
  const of = (options: Parameters<typeof installation>[0]) =>
    findingsOf(installation(options)).map(({ check }) => check);

  it("an RCD on the feeder protects the sockets behind it, one of 100 mA does not", () => {
    const one = "rcd 30 mA 1x 24 ms\ntest-button ok";
    expect(of({ device: "BS EN 61009 B40 6 kA 30 mA type A", live: one })).not.toContain("rcd/missing-for-sockets");
    const coarse = { device: "BS EN 61009 B40 6 kA 100 mA type A", live: one.replace("30 mA", "100 mA") };
    expect(of(coarse)).toContain("rcd/sensitivity-too-high");
    expect(of({})).toContain("rcd/missing-for-sockets");
  });

  it("a board fed from a name that does not exist is one finding, and its RCDs are not known", () => {
    const found = of({ from: "AA" });
    expect(found).toContain("language/unknown-name");
    expect(found).not.toContain("network/feeder-disagrees");
    expect(found).not.toContain("rcd/missing-for-sockets");
  });

  it("a board that reads twice what its feeder reads at its end", () => {
    expect(of({ Zdb: "0.62 Ω" })).toContain("loop/board-disagrees");
    expect(of({ Zdb: "0.38 Ω" })).not.toContain("loop/board-disagrees");
  });
});

describe("a way that is being typed", () => {
  const whole = way({ device: "BS EN 61009 B16 6 kA 30 mA type A", live: rcd });

  it("never names a number it does not have", () => {
    expect(ids("way").filter((id) => id.includes("record/"))).toEqual([]);
  });

  it("says nothing of other lines but what is still missing", () => {
    const still = /missing|not-stated|not-tested|record\/no-|not-named|unclosed/;
    for (let end = 1; end < whole.length; end += 3) {
      const part = whole.slice(0, end);
      const open = (part.match(/\{/g) ?? []).length - (part.match(/\}/g) ?? []).length;
      const { text, above } = inSetting(part + "\n}".repeat(Math.max(0, open)), tested);
      const line = above + part.split("\n").length;
      const others = findingsOf(text).filter((finding) => finding.line !== line && !still.test(finding.check));
      expect(others, part.split("\n").at(-1) ?? "").toEqual([]);
    }
  });
});

describe("tests spread over days", () => {
  it("a loop that is too high stays so though the RCD was tested again later", () => {
    const circuit = { device: "BS EN 60898 B16 6 kA", Zs: "5.71 Ω" };
    const later = way(circuit).replace(
      "live 2026-03-05",
      "live 2026-03-06 with M1 {\nvoltage 236 V\n}\nlive 2026-03-05",
    );
    expect(ids(later)).toContain("error loop/zs-over-limit");
  });

  it("R1+R2 still counts though insulation was tested again later", () => {
    const again = "}\ndead 2026-03-05 with M1 {\ninsulation 500 V L-N >999 MΩ L-E 500 MΩ N-E 700 MΩ\n}\nlive";
    expect(ids(way({ Zs: "1.60 Ω" }).replace("}\nlive", again))).toContain("warning loop/zs-disagrees");
  });

  it("an RCD that was too slow stays so until it is tested again at that current", () => {
    const slow = way({ device: "BS EN 61009 B16 6 kA 30 mA type A", live: "rcd 30 mA 1x 412 ms\ntest-button failed" });
    const followedBy = (lines: string) =>
      slow.replace("live 2026-03-05", `live 2026-03-06 with M1 {\n${lines}\n}\nlive 2026-03-05`);
    expect(ids(followedBy("Zs 0.71 Ω"))).toEqual(
      expect.arrayContaining(["error rcd/time-over-limit", "error rcd/test-button-failed"]),
    );
    const mended = ids(followedBy("Zs 0.71 Ω\nrcd 30 mA 1x 24 ms\ntest-button ok"));
    expect(mended).not.toContain("error rcd/time-over-limit");
    expect(mended).not.toContain("error rcd/test-button-failed");
  });

  it("a limitation later on puts no failing reading right", () => {
    const later = way({ Zs: "5.71 Ω" }).replace(
      "live 2026-03-05",
      'live 2026-03-06 with M1 {\nZs LIM "No access, agreed with the owner"\n}\nlive 2026-03-05',
    );
    expect(ids(later, { ...tested, work: "existing" })).toContain("error loop/zs-over-limit");
    expect(says(later, "loop/zs-over-limit", { ...tested, work: "existing" })).toContain(
      "It could not be read again since.",
    );
  });
});

describe("one RCD that is missing", () => {
  const circuit = {
    route: "wall method C depth 20 mm",
    more: "serves sockets lighting\nplace bathroom outdoors\nIb 10 A",
  };
  const missing = (of: Circuit) =>
    ids(of, { ...tested, premises: "dwelling" }).filter((id) => id.includes("rcd/missing"));

  it("is one finding, whatever number of rules ask for it", () => {
    expect(missing(circuit)).toEqual(["error rcd/missing-for-sockets"]);
  });

  it("is still asked for by the others where one of them is departed from", () => {
    const more = `${circuit.more}\ndeparture 411.3.3 "Risk assessed, kept on site"`;
    expect(missing({ ...circuit, more })).toContain("error rcd/missing-in-bathroom");
  });
});

it("an RCD of the older standard is not taken for a breaker", () => {
  const old = { ...tested, work: "existing", standard: "BS 7671:2001" } as const;
  expect(says({ device: "BS 4293 40 A 30 mA", live: rcd }, "design/device-does-not-exist", old)).toContain("BS 4293");
  expect(says({ device: "BS 4293 40 A 30 mA", live: rcd }, "loop/limit-unknown", old)).toBeUndefined();
});
