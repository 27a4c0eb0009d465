import { describe, expect, it } from "vitest";
import { find, fixed, marked } from "../helpers/find.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const tested = { stage: "tested" } as const;
const way = (device: string, tests: string): string => `way 1 radial "Bench sockets" {
  device ${device}
  live 2026-03-05 {
${tests}
  }
}`;
const rcbo = "BS EN 61009 B20 6 kA 30 mA type A";
const behind = (rcd: string) => ({ ...tested, board: `fed-from supply\nrcd east ${rcd}` });
const shared = (tests: string): string => `way 1 radial "Bench sockets" {
  behind east
  live 2026-03-05 {
${tests}
  }
}`;

describe("a trip time is held against the device's own standard", () => {
  it.each([
    [rcbo, "rcd 30 mA 1x 300 ms", 0],
    [rcbo, "rcd 30 mA 1x 301 ms", 1],
    [rcbo, "rcd 30 mA 2x 150 ms", 0],
    [rcbo, "rcd 30 mA 2x 151 ms", 1],
    [rcbo, "rcd 30 mA 5x 40 ms", 0],
    [rcbo, "rcd 30 mA 5x 41 ms", 1],
    [rcbo, "rcd 30 mA 1x >300 ms", 1],
    [rcbo, "rcd 30 mA 1x <300 ms", 0],
    [rcbo, "rcd 30 mA 5x no-trip", 1],
    [rcbo, 'rcd 30 mA 1x LIM "in use"', 0],
    [rcbo, "rcd 30 mA 350 ms", 0],
  ])("%s: %s", (device, test, count) => {
    expect(find("rcd/time-over-limit", way(device, test), tested)).toHaveLength(count);
  });

  it.each([
    ["BS EN 61008 63 A 100 mA type A delayed", "rcd 100 mA 1x 480 ms", 0],
    ["BS EN 61008 63 A 100 mA type A delayed", "rcd 100 mA 1x 510 ms", 1],
    ["BS EN 61008 63 A 100 mA type A", "rcd 100 mA 1x 480 ms", 1],
    ["BS 4293 63 A 30 mA", "rcd 30 mA 1x 198 ms", 0],
    ["BS 4293 63 A 30 mA", "rcd 30 mA 1x 240 ms", 1],
  ])("%s: %s", (rcd, test, count) => {
    expect(find("rcd/time-over-limit", shared(test), behind(rcd))).toHaveLength(count);
  });

  it("carries the value, the limit and where it comes from", () => {
    const [finding] = find("rcd/time-over-limit", way(rcbo, "rcd 30 mA 1x 342 ms"), tested);
    expect(finding).toMatchObject({ value: { amount: 0.342, unit: "s" }, limit: { amount: 0.3, unit: "s" } });
    expect(finding?.source?.ref).toContain("61008");
    expect(finding && marked(finding)).toBe("342 ms");
  });

  it("knows a time at 1× that stands at 5×", () => {
    expect(find("rcd/time-over-limit", way(rcbo, "rcd 30 mA 5x 187 ms"), tested)[0]?.message).toContain(
      "a time at 1 × IΔn",
    );
    expect(find("rcd/time-over-limit", way(rcbo, "rcd 30 mA 5x 420 ms"), tested)[0]?.message).not.toContain(
      "at 1 × IΔn",
    );
  });

  it("asks a delayed device for its delay", () => {
    const delayed = behind("BS EN 61008 63 A 100 mA type A delayed");
    expect(find("rcd/time-delayed-too-fast", shared("rcd 100 mA 1x 130 ms"), delayed)).toEqual([]);
    expect(find("rcd/time-delayed-too-fast", shared("rcd 100 mA 1x 129 ms"), delayed)).toHaveLength(1);
    expect(find("rcd/time-delayed-too-fast", shared("rcd 100 mA 0.5x no-trip"), delayed)).toEqual([]);
    // The shortest time at 2×, 60 ms, is from memory: 40 ms is too short whatever it is, 58 ms is to be looked up.
    const [far] = find("rcd/time-delayed-too-fast", shared("rcd 100 mA 2x 40 ms"), delayed);
    const [near] = find("rcd/time-delayed-too-fast", shared("rcd 100 mA 2x 58 ms"), delayed);
    expect([far?.verdict, near?.verdict, near?.severity]).toEqual(["fails", "unproven", "warning"]);
  });

  it("reads only the latest tests", () => {
    const text = `way 1 radial "Bench sockets" {
  device ${rcbo}
  live 2021-03-05 {
    rcd 30 mA 1x 342 ms
  }
  live 2026-03-05 {
    rcd 30 mA 1x 24.1 ms
  }
}`;
    expect(find("rcd/time-over-limit", text, tested)).toEqual([]);
  });

  it("says nothing of an edition that is not known", () => {
    const setting = { ...tested, standard: "BS 7671:2019" };
    expect(find("rcd/time-over-limit", way(rcbo, "rcd 30 mA 1x 342 ms"), setting)).toEqual([]);
  });
});

describe("slips of a trip time", () => {
  it("5× slower than 1×, of one device and one day only", () => {
    const swapped = way(rcbo, "rcd 30 mA 5x 27.6 ms\nrcd 30 mA 1x 11.2 ms");
    expect(find("rcd/time-columns-swapped", swapped, tested)).toHaveLength(1);
    const setting = {
      ...tested,
      board:
        "fed-from supply\nrcd east BS EN 61008 63 A 30 mA\nrcd west BS EN 61008 63 A 30 mA\nlive 2026-03-05 {\nrcd east 30 mA 1x 11.2 ms\nrcd west 30 mA 5x 27.6 ms\n}",
    };
    expect(find("rcd/time-columns-swapped", "way 1 spare", setting)).toEqual([]);
  });

  it("the multiple is left out: each fix writes one before the time", () => {
    const [finding] = find("rcd/time-without-multiple", way(rcbo, "    rcd 30 mA 24.1 ms"), tested);
    expect(finding && fixed(finding)).toContain("rcd 30 mA 1x 24.1 ms");
    expect(finding && fixed(finding, 1)).toContain("rcd 30 mA 5x 24.1 ms");
  });

  it("tripped at half its rating", () => {
    expect(find("rcd/tripped-at-half", way(rcbo, "rcd 30 mA 0.5x 187 ms"), tested)).toHaveLength(1);
    expect(find("rcd/tripped-at-half", way(rcbo, "rcd 30 mA 0.5x >1999 ms"), tested)).toEqual([]);
    expect(find("rcd/tripped-at-half", way(rcbo, "rcd 30 mA 0.5x no-trip"), tested)).toEqual([]);
  });

  it.each([
    ["30 mA type A", "22 mA", 0],
    ["30 mA type A", "10 mA", 1],
    ["30 mA type A", "42 mA pulsating", 0],
    ["30 mA type A", "42 mA", 1],
    ["30 mA type A", "31 mA sinusoidal", 1],
    ["30 mA type A", "43 mA", 1],
    ["30 mA type AC", "31 mA", 1],
    ["30 mA type AC", "16 mA", 0],
    ["10 mA type A", "19 mA pulsating", 0],
    ["30 mA type B", "90 mA", 1],
    ["30 mA type B", "50 mA smooth", 0],
    ["30 mA type B", "90 mA smooth", 1],
    ["30 mA", "90 mA", 0],
  ])("a %s device trips at %s", (device, current, count) => {
    const lines = way(`BS EN 61009 B20 6 kA ${device}`, `trip-current ${current}`);
    expect(find("rcd/test-trip-current", lines, tested)).toHaveLength(count);
  });
});

describe("the tests an edition asks for", () => {
  const missing = (tests: string, standard: string, device = rcbo) =>
    find("rcd/test-missing", way(device, tests), { ...tested, standard });

  it("one at the rating since 2022, and no other is missed", () => {
    expect(missing("rcd 30 mA 1x 24.1 ms", "BS 7671:2018+A2:2022")).toEqual([]);
    expect(missing("rcd 30 mA 5x 11.2 ms", "BS 7671:2018+A2:2022")).toHaveLength(1);
    expect(missing("Zs 0.62 Ω", "BS 7671:2018+A4:2026")).toHaveLength(1);
  });

  it("half, once and five times before; half alone only advises", () => {
    const [five] = missing("rcd 30 mA 0.5x no-trip\nrcd 30 mA 1x 24.1 ms", "BS 7671:2018");
    expect(five?.message).toContain("5 × IΔn");
    expect(five?.severity).toBe("error");
    const [half] = missing("rcd 30 mA 1x 24.1 ms\nrcd 30 mA 5x 11.2 ms", "BS 7671:2018");
    expect(half?.severity).toBe("information");
  });

  it("five times only where persons rely on it", () => {
    const setting = { ...behind("BS EN 61008 63 A 100 mA type A"), standard: "BS 7671:2018" };
    expect(find("rcd/test-missing", shared("rcd 100 mA 1x 24.1 ms"), setting)).toEqual([]);
  });

  it("a limitation is a statement, and nothing is asked of a design", () => {
    expect(missing('rcd 30 mA 1x LIM "in use, agreed"', "BS 7671:2018+A2:2022")).toEqual([]);
    expect(find("rcd/test-missing", way(rcbo, "Zs 0.62 Ω"), { stage: "dead-tested" })).toEqual([]);
  });

  it("a shared RCD once, wherever it was tested", () => {
    const setting = behind("BS EN 61008 63 A 30 mA type A");
    const two = `${shared("Zs 0.62 Ω")}\nway 2 radial "Yard" {\n behind east\n live 2026-03-05 {\n Zs 0.71 Ω\n }\n}`;
    const found = find("rcd/test-missing", two, setting);
    expect(found.map(marked)).toEqual(["rcd"]);
    expect(find("rcd/test-missing", two.replace("Zs 0.71 Ω", "Zs 0.71 Ω\n rcd 30 mA 1x 24 ms"), setting)).toEqual([]);
  });
});

describe("which device was tested", () => {
  it("an RCD upstream may be tested from a way", () => {
    const setting = { ...tested, board: "fed-from supply\nmain-switch BS EN 61008 100 A 100 mA type A delayed" };
    const lines = way("BS EN 60898 B20 6 kA", "rcd 100 mA 1x 240 ms");
    expect(find("rcd/test-no-device", lines, setting)).toEqual([]);
    expect(find("rcd/time-over-limit", lines, setting)).toEqual([]);
  });

  it("a way behind a name that is not defined is left to the check of names", () => {
    expect(find("rcd/test-no-device", shared("rcd 30 mA 1x 24 ms"), tested)).toEqual([]);
  });

  it.each([
    ["rcd 30 mA 1x 24 ms", 1],
    ["rcd 30 mA 1x no-trip", 1],
    ["rcd 30 mA 1x", 1],
    ['rcd 30 mA 1x LIM "in use, agreed"', 0],
    ["rcd 30 mA 1x N/A", 0],
    ["rcd N/A", 0],
    // One that was made is one, whatever stands beside it.
    ['rcd 30 mA 1x N/A\nrcd 30 mA 5x LIM "in use, agreed"\nrcd 30 mA 0.5x no-trip', 1],
  ])("where no RCD is, of %j on a way and on a board: %i", (lines, count) => {
    const breaker = way("BS EN 60898 B16 6 kA", lines);
    expect(find("rcd/test-no-device", breaker, tested)).toHaveLength(count);
    const setting = { ...tested, board: `fed-from supply\nlive 2026-03-05 {\n${lines}\n}` };
    expect(find("rcd/test-no-device", "way 1 spare", setting)).toHaveLength(count);
    const outlet = way(rcbo, lines.replaceAll(/^rcd/gm, "rcd at S2")).replace(
      "  live",
      "  run A 7 m S1 6 m S2\n  live",
    );
    expect(find("rcd/test-no-device", outlet, tested)).toHaveLength(count);
  });

  it("tested at another rating: the fix writes the device's own", () => {
    const [finding] = find("rcd/test-sensitivity", way(rcbo, "    rcd 100 mA 1x 24 ms"), tested);
    expect(finding && fixed(finding)).toContain('rcd 30 mA was 100 mA "Rated current written wrongly" 1x 24 ms');
  });

  it("an instrument for type AC on a type A device, before 2022 only", () => {
    const lines = way(rcbo, "rcd 30 mA 1x 24 ms").replace("live 2026-03-05", "live 2026-03-05 with M1");
    const before = 'instrument M1 "RCD tester" {\ntests AC\n}';
    expect(find("rcd/test-instrument-type", lines, { ...tested, before, standard: "BS 7671:2018" })).toHaveLength(1);
    expect(find("rcd/test-instrument-type", lines, { ...tested, before })).toEqual([]);
    const unsaid = { ...tested, before: 'instrument M1 "RCD tester"', standard: "BS 7671:2018" };
    expect(find("rcd/test-instrument-type", lines, unsaid)).toEqual([]);
  });
});

describe("test buttons", () => {
  // Two of one rating: the one of the ways has a name, so that a button without one is the main switch's.
  it("a button without a name on a board is that of its main switch, where the others have names", () => {
    const board = (button: string) =>
      `fed-from supply\nmain-switch BS EN 61008 100 A 30 mA type A\nrcd east BS EN 61008 63 A 30 mA type A\nlive 2026-03-05 {\n${button}\n}`;
    const missing = (button: string) =>
      find("rcd/test-button-missing", 'way 1 radial "Bench" {\nbehind east\n}', { ...tested, board: board(button) })
        .length;
    expect(missing("test-button ok") - missing("test-button ok\ntest-button east ok")).toBe(1);
    expect(missing("test-button east ok") - missing("test-button ok\ntest-button east ok")).toBe(1);
  });

  it("of a board that has an RCD on one of its ways alone may be of that", () => {
    const setting = { ...tested, board: "fed-from supply\nlive 2026-03-05 {\nrcd 30 mA 1x 24 ms\n}" };
    const ways = (device: string) =>
      `way 1 radial "Bench" {\ndevice ${device}\n}\nway 2 radial "Hob" {\ndevice BS EN 60898 B32 6 kA\n}`;
    expect(find("rcd/test-no-device", ways(rcbo), setting)).toEqual([]);
    expect(find("rcd/test-no-device", ways("BS EN 60898 B16 6 kA"), setting)).toHaveLength(1);
  });

  it("a button that failed, of an RCD or an AFDD", () => {
    const lines = way(rcbo, "test-button failed\nafdd-button failed");
    expect(find("rcd/test-button-failed", lines, tested).map(({ severity }) => severity)).toEqual(["error", "error"]);
  });

  it("not applicable is a statement", () => {
    expect(find("rcd/test-button-missing", way(rcbo, "test-button N/A"), tested)).toEqual([]);
    expect(find("rcd/test-button-missing", way(rcbo, "Zs 0.62 Ω"), tested)).toHaveLength(1);
  });
});

describe("which of several RCDs of one rating a test is of", () => {
  const board =
    "fed-from supply\nmain-switch BS EN 61008 100 A 30 mA type A\nrcd left BS EN 61008 63 A 30 mA type A\nrcd right BS EN 61008 63 A 30 mA type A";
  const untested = (tests: string, onBoard = "") => {
    const lines = `${onBoard}way 1 radial "Heater" {\ndevice BS EN 60898 B16 6 kA\nbehind left\nserves heating\nlive 2026-03-05 {\n${tests}\n}\n}`;
    const { text } = inSetting(lines, { stage: "tested", board });
    const written = text.split("\n");
    return findingsOf(text)
      .filter(({ check }) => /^(rcd\/test-(missing|other|unnamed)|language)/.test(check))
      .map(({ check, line }) => `${check} ${/^(main-switch|rcd \w+)/.exec(written[line - 1] ?? "")?.[1]}`);
  };

  it("is the nearest to the load where none is named", () => {
    expect(untested("rcd 30 mA 1x 24.1 ms")).toEqual(["rcd/test-missing main-switch", "rcd/test-missing rcd right"]);
  });

  it("is the one that is named, the main switch by what it is", () => {
    expect(untested("rcd main-switch 30 mA 1x 24.1 ms\ntrip-current main-switch 22 mA")).toEqual([
      "rcd/test-missing rcd left",
      "rcd/test-missing rcd right",
    ]);
    const all = "live 2026-03-05 {\nrcd main-switch 30 mA 1x 24.1 ms\nrcd right 30 mA 1x 23.3 ms\n}\n";
    expect(untested("rcd left 30 mA 1x 24.1 ms", all)).toEqual([]);
  });

  it("is asked where the circuit is not behind it", () => {
    expect(untested("rcd right 30 mA 1x 24.1 ms")).toContain("rcd/test-other-rcd rcd right");
  });
});
