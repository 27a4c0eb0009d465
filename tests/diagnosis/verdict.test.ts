/** One verdict for a circuit: what explains all its readings speaks for the checks that look at one of them. */
import { describe, expect, it } from "vitest";
import { check } from "../../server/library/index.ts";
import { inSetting } from "../helpers/sample.ts";

const run = "run A 5 m S1 10 m S2 10 m S3 10 m S4 10 m S5 10 m S6 5 m A";
const soundN = "0.22 0.22 0.22 0.22 0.22 0.22";
const soundE = "0.28 0.29 0.29 0.29 0.29 0.28";

const points = (neutral: string, earth: string): string => {
  const [N, E] = [neutral.split(" "), earth.split(" ")];
  return N.map((value, at) => `at S${at + 1} L-N ${value} Ω L-E ${E[at]} Ω`).join("\n    ");
};
const ring = (ends: string, neutral: string, earth: string, more = "") => {
  const [r1, rn, r2] = ends.split(" ");
  return `way 1 ring "Sockets" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  ${run}
  ${more}
  dead 2026-03-04 {
    ends r1 ${r1} Ω rn ${rn} Ω r2 ${r2} Ω
    ${points(neutral, earth)}
  }
}`;
};
const radial = (dead: string, live: string) => `way 1 radial "Water heater" {
  device BS EN 60898 B16 6 kA
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  length 30 m
  dead 2026-03-04 {
    ${dead}
  }
  live 2026-03-05 {
    ${live}
  }
}`;

/** What is found of the readings of a way, as `severity check`, and the verdict on them. */
function judged(way: string, stage: "installed" | "tested" = "installed") {
  const { files, suppressed } = check(inSetting(way, { stage }).text);
  const findings = files
    .flatMap((file) => file.findings)
    .filter((one) => /^(diagnosis|ring|continuity|loop|record\/departure)/.test(one.check));
  const verdict = findings.find((one) => one.check.startsWith("diagnosis/"));
  return {
    all: findings.map((one) => `${one.severity} ${one.check}`).filter((one) => !/missing/.test(one)),
    says: verdict?.message ?? "",
    lists: (verdict?.related ?? []).map(({ message }) => message),
    suppressed,
  };
}

const open = ">99.9";
const joint = "diagnosis/readings-disagree";

describe("a fault that all the readings show", () => {
  it("is one error, and the checks it explains are named in it", () => {
    const { all, lists } = judged(ring("0.44 0.44 0.73", soundN, `0.28 ${open} 0.29 0.29 0.29 0.28`));
    expect(all).toEqual([`error ${joint}`]);
    expect(lists).toContain("Explained by the first: ring/point-open.");
  });

  it("counts how often a check that it explains would have spoken", () => {
    const { lists } = judged(ring("0.44 0.44 0.73", soundN, Array(6).fill(open).join(" ")));
    expect(lists).toContain("Explained by the first: ring/point-open, at 6 readings.");
  });

  it("puts what is met more often before what reads the same", () => {
    const { lists } = judged(ring("0.44 0.44 0.73", soundN, `0.28 ${open} 0.29 0.29 0.29 0.28`));
    expect(lists[0]).toMatch(/^1\. The protective conductor is not connected at S2\./);
    expect(lists[1]).toMatch(/^2\. The line and neutral are crossed at S2\./);
    expect(lists[2]).toMatch(/Take S2 off its box and look/);
    const both = judged(ring("0.44 0.44 0.73", `0.22 ${open} 0.22 0.22 0.22 0.22`, `0.28 ${open} 0.29 0.29 0.29 0.28`));
    expect(both.lists[0]).toMatch(/the point is on another circuit, at S2\./);
  });

  it("is a figure of eight, and sends nobody to an earth terminal", () => {
    // 60 m of ring with a cable of 8 m from S2 to S5: two loops that share the stretch between, and read high inside it.
    const { all, says } = judged(
      ring("0.27 0.27 0.44", "0.13 0.13 0.21 0.21 0.13 0.13", "0.17 0.18 0.28 0.28 0.18 0.17"),
    );
    expect(all).toEqual([`warning ${joint}`]);
    expect(says).toMatch(/Likeliest: a cable of about 8 m bridges the ring between S2 and S5\./);
  });

  it("is a line leg out of its place at the board, and the legs are sought there", () => {
    const { all, lists } = judged(
      ring(`${open} 0.44 0.73`, "0.44 0.44 0.44 0.44 0.44 0.44", "0.70 0.66 0.61 0.56 0.52 0.47"),
    );
    expect(all).toEqual([`error ${joint}`]);
    expect(lists.join("\n")).toMatch(/test each line leg of this ring for continuity with every other line end there/);
  });
});

describe("a slip in testing", () => {
  it("that leaves all points open is one warning, since nothing else was tested", () => {
    const { all, says } = judged(ring("0.44 0.44 0.73", soundN, Array(6).fill(open).join(" ")));
    expect(all).toEqual([`warning ${joint}`]);
    expect(says).toMatch(/not joined at the board in the L-E round/);
  });

  it.each([
    ["ends", ring("0.58 0.58 0.87", soundN, soundE), /not nulled for the end-to-end readings: each has about 0\.1\d Ω/],
    [
      "L-E",
      ring("0.44 0.44 0.73", soundN, "0.46 0.47 0.47 0.47 0.47 0.46"),
      /not nulled for the L-E readings: each has about 0\.1\d Ω/,
    ],
  ])("is leads that were not nulled for the %s alone", (_, way, words) => {
    const { all, says } = judged(way);
    expect(says).toMatch(words);
    expect(all).toEqual([`warning ${joint}`]);
  });

  it("is r2 copied from r1", () => {
    const { all, says } = judged(ring("0.44 0.44 0.44", soundN, soundE));
    expect(says).toMatch(/r2 repeats r1/);
    expect(all).toEqual([`warning ${joint}`]);
  });

  it("is line to neutral read twice, though each point is nearly within tolerance", () => {
    expect(judged(ring("0.44 0.44 0.73", soundN, soundN)).says).toMatch(/L-E column repeats the L-N column/);
  });
});

describe("columns that read alike", () => {
  const way = (cable: string, earth: string) => `way 1 radial "Heaters" {
  cable ${cable} line 2.5 mm² cpc 1.5 mm²
  run A 10 m P1 10 m P2 10 m P3 10 m P4
  dead 2026-03-04 {
${["0.15", "0.30", "0.44", "0.59"].map((LN, at) => `    at P${at + 1} L-N ${LN} Ω L-E ${earth.split(" ")[at]} Ω`).join("\n")}
  }
}`;
  const again = "0.15 0.29 0.45 0.59";
  const same = "0.15 0.30 0.44 0.59";

  it("are one round read twice where the cable is made with a smaller earth, or one written again", () => {
    for (const [cable, earth] of [
      ["flat-twin", again],
      ["flat-twin", same],
      ["singles 70 °C", same],
    ] as const)
      expect(judged(way(cable, earth)).says).toMatch(/Likeliest: the L-E column repeats the L-N column/);
  });

  it("are an earth of the line's size where the cores are separate and each was read", () => {
    expect(judged(way("singles 70 °C", again)).says).toMatch(/protective conductor is 2\.5 mm² throughout/);
  });
});

describe("what other tests show", () => {
  it("leads that were not nulled explain no reading that the loop has as well", () => {
    const explained = (Zs: string) => judged(radial("R1+R2 1.05 Ω", Zs)).lists.filter((one) => /^\d/.test(one));
    const leads = (Zs: string) => explained(Zs).filter((one) => /leads were not nulled/.test(one));
    expect(explained("Zs 1.35 Ω").length).toBeGreaterThan(1);
    expect(leads("Zs 1.35 Ω")).toEqual([]);
    // The loop that 30 m of this cable gives: the dead test read high by itself.
    expect(leads("Zs 0.88 Ω")).toHaveLength(1);
  });

  it("explanations that fit alike are not called less likely, the first of them least", () => {
    const { lists } = judged(radial("R1+R2 1.95 Ω", "Zs 2.25 Ω"));
    expect(lists[0]).toMatch(
      /^1\. .*\((The|By far the) best fit|^1\. .*\(Fits about as well as any of those tried\.\)$/,
    );
    expect(lists.filter((one) => /\(Fits about as well/.test(one)).length).toBeGreaterThan(1);
  });

  it("an earth that is open where Zs reads well is made through other metal", () => {
    const { all, says } = judged(radial(`R1+R2 ${open} Ω`, "Zs 0.42 Ω"), "tested");
    expect(all).toEqual([`error ${joint}`]);
    expect(says).toMatch(
      /Likeliest: the protective conductor is open .* Zs of 0\.42 Ω then comes back through other metal/,
    );
  });

  it("a line that tripped an RCD, or carried a loop test, is not open", () => {
    for (const live of ["Zs 0.42 Ω", "rcd 30 mA 1x 24 ms"]) {
      const { lists } = judged(radial(`R1+R2 ${open} Ω`, live), "tested");
      expect(lists).not.toHaveLength(0);
      expect(lists.filter((one) => /^\d\. The line is (open|not)/.test(one))).toEqual([]);
    }
  });

  it("a loop that fits the cable speaks for a link forgotten, more by what a no-trip range puts on it too", () => {
    const way = (live: string) =>
      radial(`R1+R2 ${open} Ω`, live)
        .replace("length 30 m", "run A 10 m P1 10 m P2 10 m P3")
        .replace("R1+R2", "at P1 L-N 0.15 Ω L-E >99.9 Ω\n    at P2 L-N 0.30 Ω L-E >99.9 Ω\n    at P3 L-N 0.44 Ω L-E");
    const first = (live: string) =>
      check(inSetting(way(live), { stage: "tested", supply: "earthing TN-S\nZe 0.20 Ω\nIpf 1.2 kA" }).text)
        .files.flatMap(({ findings }) => findings)
        .find((one) => one.check === joint)
        ?.related.map(({ message }) => message) ?? [];
    const forgotten = /^\d\. The conductors were not joined at the board/;
    // 0.20 Ω and 0.59 Ω of cable. Beyond what such a range puts on it, and below the cable, other metal carries the loop.
    const weight = (live: string) => first(live).findIndex((one) => forgotten.test(one));
    expect(first("Zs 0.45 Ω")[0]).toMatch(
      /protective conductor is open between the board and P1.* through other metal/,
    );
    expect(weight("Zs 0.45 Ω")).not.toBe(0);
    expect(first("Zs 1.05 Ω no-trip")).toEqual(first("Zs 0.80 Ω").map((one) => one.replace("0.80 Ω", "1.05 Ω")));
    expect(first("Zs 1.05 Ω high-current")).not.toEqual(first("Zs 1.05 Ω no-trip"));
  });

  it("a test made years before says nothing of a break since", () => {
    const earlier = radial(`R1+R2 ${open} Ω`, "Zs 0.42 Ω").replace("live 2026-03-05", "live 2019-03-05");
    const { says } = judged(earlier, "tested");
    expect(says).toContain("Likeliest: ");
    expect(says).not.toMatch(/other metal/);
  });

  it("insulation that is low as well is named beside an open conductor", () => {
    const { says } = judged(radial(`R1+R2 ${open} Ω\n    insulation 500 V L-E 0.02 MΩ`, "voltage 236 V"), "tested");
    expect(says).toMatch(/low insulation, L-E 0\.02 MΩ, may have the same cause/);
  });
});

describe("a loop that reads above its parts", () => {
  const rcbo = (Zs: string) =>
    radial("R1+R2 0.59 Ω", Zs).replace("BS EN 60898 B16 6 kA", "BS EN 61009 B16 6 kA 30 mA type A");
  const found = (Zs: string) =>
    check(inSetting(rcbo(Zs), { stage: "tested", supply: "earthing TN-S\nZe 0.20 Ω\nIpf 1.2 kA" }).text)
      .files.flatMap((file) => file.findings)
      .find((one) => one.check === "loop/zs-disagrees");

  it("by what a no-trip range puts on it is a note where the range is written, and a question where it is not", () => {
    expect(found("Zs 1.02 Ω no-trip")?.severity).toBe("information");
    expect(found("Zs 1.02 Ω no-trip")?.message).toMatch(/no-trip range may read up to 0\.30? Ω high/);
    expect(found("Zs 1.02 Ω")?.severity).toBe("warning");
    expect(found("Zs 1.02 Ω")?.message).toMatch(/if it was read on a no-trip range/);
  });

  it("by more than that is a joint, whatever the range", () => {
    for (const range of ["", " no-trip", " high-current"]) {
      expect(found(`Zs 1.20 Ω${range}`)?.severity).toBe("warning");
      expect(found(`Zs 1.20 Ω${range}`)?.message).toMatch(/look for a loose joint/);
    }
  });
});

describe("nothing is lost", () => {
  it("where nothing explains the readings the single checks speak for themselves", () => {
    const { all } = judged(
      ring(`0.44 ${open} 0.11`, `0.05 0.91 0.22 3.1 0.22 ${open}`, "0.88 0.03 2.9 0.29 0.01 0.28"),
    );
    expect(all).toContain("error ring/open-conductor");
    expect(all).toContain(`information ${joint}`);
  });

  it("a departure from all that is explained excuses the verdict, and one of a part does not", () => {
    const spur = ring("0.44 0.44 0.73", "0.22 0.22 0.22 0.40 0.22 0.22", "0.28 0.29 0.29 0.53 0.29 0.28");
    const [explained] = judged(spur).lists.flatMap((one) => /Explained by the first: (\S+?)[.,]/.exec(one)?.[1] ?? []);
    const excused = judged(spur.replace("dead 2026", `departure ${explained} "On an old spur, seen"\n  dead 2026`));
    expect(explained).toBe("ring/point-reading");
    expect(excused.all).toEqual([]);
    expect(excused.suppressed).toHaveLength(1);
    const open2 = ring(
      "0.44 0.44 0.73",
      soundN,
      `0.28 ${open} 0.29 0.29 0.29 0.28`,
      'departure ring/point-reading "On a spur"',
    );
    expect(judged(open2).all).toContain(`error ${joint}`);
  });

  it("a reading over its limit speaks for itself beside the verdict", () => {
    const { all } = judged(radial("R1+R2 6.10 Ω", "Zs 6.45 Ω"), "tested");
    expect(all).toContain("error loop/zs-over-limit");
  });
});
