import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { findingsOf, inSetting, unmark } from "../helpers/sample.ts";

/** The checks that look at the network of boards as a whole. */
const families = /^(drop|demand|energy|coordination)\//;
const own = rules.filter(({ id }) => families.test(id));

const raised = (text: string) => findingsOf(text).filter(({ check }) => families.test(check));

describe("a fix puts right what it was offered for", () => {
  const offers = own.flatMap(({ id, examples }) =>
    examples.flatMap(({ bad, setting }) => {
      const text = inSetting(unmark(bad).text, setting).text;
      return (foundBy(id, text)[0]?.fixes ?? []).map(({ title }, which) => ({ id, title, text, which }));
    }),
  );

  it("and the checks that can name a size or a rating offer it", () => expect(offers.length).toBeGreaterThan(8));

  it.each(offers)("$id: $title", ({ id, text, which }) => {
    const after = fixed(id, text, which);
    const problems = [...fileOfText("sample.ways", after).model.problems.values()].flat();
    expect(problems.map(({ message }) => message)).toEqual([]);
    expect(foundBy(id, after).map(({ message }) => message)).toEqual([]);
  });
});

it.each(own.map(({ id, examples }) => ({ id, examples })))(
  "$id says where its limit comes from, and how",
  ({ id, examples }) => {
    for (const { bad, setting } of examples) {
      const found = foundBy(id, inSetting(unmark(bad).text, setting).text);
      expect(found.length).toBeGreaterThan(0);
      for (const { value, limit, source, working } of found) {
        if (!value || !limit) continue;
        expect(source?.ref).toMatch(/\S/);
        expect(working).toMatch(/\S/);
      }
    }
  },
);

interface Circuit {
  readonly Ib: number;
  readonly length: number;
}

/**
 * A sound network by plain arithmetic: circuits of at most 10 A in 2.5 mm² that drop 1.3 % at most, three to a board, on
 * feeders of 16 mm² that carry the sum of them and drop 1.5 % at most.
 */
function network(boards: readonly (readonly Circuit[])[], stretch = 1): string {
  const feeders = boards.map((circuits, index) => {
    const Ib = circuits.reduce((sum, circuit) => sum + circuit.Ib, 0);
    const length = Math.min(120, Math.floor((230 * 0.015) / (0.0028 * Ib)));
    return `way ${index + 1} feeder "Feeder" {
      device BS 88-2 63 A 80 kA gG
      feeds B${index}
      cable armoured 70 °C line 16 mm² cpc 16 mm²
      route clipped method C
      length ${length} m
      Ib ${Ib} A
    }`;
  });
  const lists = boards.map((circuits, index) =>
    [
      `board B${index} "Board" {`,
      "fed-from A",
      "main-switch BS EN 60947-3 100 A",
      ...circuits.map(
        ({ Ib, length }, way) => `way ${way + 1} radial "Lighting" {
      device BS EN 60898 B16 6 kA
      cable multicore 70 °C line 2.5 mm² cpc 2.5 mm²
      route clipped method C
      length ${Math.max(1, Math.floor(length * Math.min(1, (230 * 0.013) / (0.018 * Ib * length))) * stretch)} m
      Ib ${Ib} A
      serves lighting
    }`,
      ),
      "}",
    ].join("\n"),
  );
  return `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  stage design
  premises commercial
  supply {
    earthing TN-S
    Ze 0.12 Ω
    Ipf 4.2 kA
    cutout BS 88-3 100 A
  }
  board A "Main" {
    fed-from supply
    main-switch BS EN 60947-3 100 A
    ${feeders.join("\n    ")}
  }
  ${lists.join("\n  ")}
}
`;
}

const circuit = fc.record({ Ib: fc.integer({ min: 1, max: 10 }), length: fc.integer({ min: 2, max: 120 }) });
const boards = fc.array(fc.array(circuit, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 });

describe("networks of boards", () => {
  it("that are sound raise nothing", () => {
    fc.assert(
      fc.property(boards, (lists) => {
        expect(raised(network(lists))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it("with circuits far too long are all found", () => {
    fc.assert(
      fc.property(boards, (lists) => {
        const found = new Set(raised(network(lists, 12)).map(({ check, line }) => `${check} ${line}`));
        const long = lists.flat().filter(({ Ib, length }) => {
          const reduced = Math.max(1, Math.floor(length * Math.min(1, (230 * 0.013) / (0.018 * Ib * length)))) * 12;
          return (0.018 * Ib * reduced) / 230 > 0.03 / 0.8;
        });
        expect([...found].filter((one) => one.startsWith("drop/over-limit")).length).toBeGreaterThanOrEqual(
          long.length,
        );
      }),
      { numRuns: 30 },
    );
  });
});

describe("what other checks call right", () => {
  const good = rules.flatMap(({ id, examples }) =>
    examples.map((example, index) => ({ id, index, text: inSetting(unmark(example.good).text, example.setting).text })),
  );

  it.each(good)("raises nothing here: $id, sample $index", ({ text }) => {
    expect(raised(text)).toEqual([]);
  });
});

describe("boards that feed each other in a circle, or nobody feeds", () => {
  it("are left to the checks of the network", () => {
    const text = network([[{ Ib: 8, length: 20 }]]).replace("fed-from supply", "fed-from B0");
    expect(raised(text)).toEqual([]);
  });
});

describe("lines that are loaded unequally", () => {
  const board = (...ways: readonly string[]) => `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  premises commercial
  supply {
    phases three
  }
  board A "Main" {
    fed-from supply
${ways.map((way, index) => `way ${index + 1} radial "Load" {\n${way}\n}`).join("\n")}
  }
}`;
  const found = (text: string) => raised(text).map(({ check }) => check);

  it("are told only where moving a circuit evens them out", () => {
    expect(found(board("phase L1\nIb 30 A"))).toEqual([]);
    expect(found(board("phase L1\nIb 16 A", "phase L1\nIb 16 A"))).toEqual(["demand/unbalanced"]);
    expect(found(board("phase L1\nIb 16 A", "phase L2\nIb 16 A", "phase L3\nIb 12 A"))).toEqual([]);
  });

  it("are not told while a circuit has no line or no load yet", () => {
    expect(found(board("phase L1\nIb 16 A", "phase L1\nIb 16 A", "Ib 16 A"))).toEqual(["demand/line-not-stated"]);
    expect(found(board("phase L1\nIb 16 A", "phase L1\nIb 16 A", "phase L2"))).toEqual([]);
  });
});

describe("what is not judged twice", () => {
  it("a feeder that leaves nothing is named once, and not each circuit behind it", () => {
    const text = network([
      [
        { Ib: 10, length: 10 },
        { Ib: 10, length: 10 },
        { Ib: 10, length: 10 },
      ],
    ]).replace(/length 41 m/, "length 100 m");
    expect(raised(text).map(({ check }) => check)).toEqual(["drop/feeder-uses-allowance"]);
  });

  it("a recorded fault current is left to the check of records", () => {
    const text = network([[{ Ib: 5, length: 10 }]])
      .replace("Ipf 4.2 kA", "Ipf 9 kA")
      .replace(/length 120 m/, "length 1 m");
    expect(raised(text).map(({ check }) => check)).toContain("coordination/breaking-capacity-exceeded");
    const recorded = text.replace("fed-from A\n", "fed-from A\nIpf 8.6 kA\n");
    expect(raised(recorded).map(({ check }) => check)).not.toContain("coordination/breaking-capacity-exceeded");
  });
});
