import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { certainAtOrigin, certainDemand } from "../../server/boards/certain-demand.ts";
import { demandOf } from "../../server/boards/demand.ts";
import { originDemand } from "../../server/boards/demand-origin.ts";
import { networkOf } from "../../server/boards/network.ts";
import { diversified } from "../../server/calc/diversity.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { textOf } from "../../server/syntax/document.ts";
import { applyEdit } from "../../server/syntax/edit.ts";
import { fileOfText, loadFile } from "../../server/workspace/loaded-file.ts";
import { half } from "../calc/helpers.ts";
import { generate } from "../helpers/generate.ts";
import { installationOf, nodeOf } from "../helpers/place.ts";

const house = (ways: string, premises = "dwelling", supply = "earthing TN-S") => `wayfile 1
installation "House" {
  standard BS 7671:2018+A2:2022
  premises ${premises}
  supply {
    ${supply}
  }
  board A "Main" {
    fed-from supply
${ways}
  }
}`;

const greatest = (text: string) => originDemand(installationOf(text))?.greatest.value ?? Number.NaN;

describe("worked examples", () => {
  // Basic Electrical Installation Work, p. 298: a 12 kW cooker with a socket on its control unit comes to 27.65 A.
  it("a 12 kW cooker with a socket", () => {
    const value = greatest(house('way 1 radial "Cooker" {\n serves cooker sockets\n load 12 kW\n}'));
    expect(Math.abs(value - 27.65)).toBeLessThanOrEqual(half(2));
  });

  // Quick diversity question (forum): 5.8 kW at 240 V comes to 19.25 A.
  it("a 5.8 kW cooker at 240 V", () => {
    const way = 'way 1 radial "Cooker" {\n serves cooker sockets\n load 5.8 kW\n}';
    const value = greatest(house(way, "dwelling", "U0 240 V"));
    expect(Math.abs(value - 19.25)).toBeLessThanOrEqual(half(2));
  });

  // What is the maximum demand and diversity? (trade-body answer): 90.32 A from the ratings. Its point is that loads
  // should be taken: here only the socket circuits are taken at their ratings, and said to be.
  it("a house of two rings, two lighting circuits, a cooker and a heater", () => {
    const text = house(`way 1 ring "Sockets" {\n device BS EN 60898 B32 6 kA\n serves sockets\n}
way 2 ring "Sockets" {\n device BS EN 60898 B32 6 kA\n serves sockets\n}
way 3 radial "Lighting" {\n serves lighting\n Ib 6 A\n}
way 4 radial "Lighting" {\n serves lighting\n Ib 6 A\n}
way 5 radial "Heater" {\n serves water-heater\n Ib 16 A\n}
way 6 radial "Cooker" {\n serves cooker sockets\n Ib 32 A\n}`);
    const demand = originDemand(installationOf(text));
    expect(demand?.greatest.value).toBeCloseTo(90.32, 9);
    expect(demand?.assumed.map(({ way }) => way.id)).toEqual(["1", "2"]);
    expect(demand?.greatest.source.standing).toBe("computed");
  });
});

describe("what counts, and how much", () => {
  const lighting = 'way 1 radial "Lighting" {\n serves lighting\n Ib 10 A\n}';

  it.each([
    ["dwelling", 6.6],
    ["commercial", 9],
    ["shared-house", 7.5],
    ["industrial", 10],
  ])("lighting of 10 A in premises of kind %s: %f A", (premises, amperes) => {
    expect(greatest(house(lighting, premises))).toBeCloseTo(amperes, 9);
  });

  // On-Site Guide, Table A2: the largest standard circuit in full and four tenths of the others. A radial of sockets is none.
  it("takes rings as standard circuits, whether it is written what they serve or not", () => {
    const device = "device BS EN 60898 B32 6 kA";
    const two = (lines: string) =>
      house(`way 1 ring "A" {\n ${device}\n${lines}\n}\nway 2 ring "B" {\n ${device}\n${lines}\n}`);
    expect(greatest(two("serves sockets"))).toBeCloseTo(32 + 0.4 * 32, 9);
    expect(greatest(two(""))).toBeCloseTo(32 + 0.4 * 32, 9);
  });

  it("takes a designer's own diversity before the table, and a power factor into the current", () => {
    expect(greatest(house('way 1 radial "Pump" {\n serves motor\n Ib 20 A\n diversity 30 %\n}'))).toBeCloseTo(6, 9);
    expect(greatest(house('way 1 radial "Pump" {\n serves motor\n load 2.3 kW\n power-factor 80 %\n}'))).toBeCloseTo(
      12.5,
      9,
    );
  });

  it("counts no generator, and says what it could not count", () => {
    const text = house(`way 1 radial "Roof" {\n serves pv\n Ib 16 A\n}
way 2 radial "Heater" {\n serves heating\n}
way 3 radial "Alarm" {\n serves alarms\n Ib 1 A\n}`);
    const demand = originDemand(installationOf(text));
    expect(demand?.greatest.value).toBeCloseTo(1, 9);
    expect(demand?.unknown.map(({ way }) => way.id)).toEqual(["2"]);
  });

  it("does not call a sum in full a demand with diversity", () => {
    const two = `${lighting}\nway 2 radial "Kiln" {\n Ib 20 A\n}`;
    expect(originDemand(installationOf(house(two, "industrial")))?.diverse).toBe(false);
    expect(originDemand(installationOf(house(two)))?.diverse).toBe(true);
  });
});

describe("up the feeders, line by line", () => {
  const network = (feeder: string) => `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  premises commercial
  supply {
    phases three
  }
  board A "Main" {
    fed-from supply
    way 1 radial "Kiln" {
      phase L1
      Ib 20 A
    }
    way 2 feeder "Annexe" {
      feeds B
      ${feeder}
    }
    way 3 radial "Lathe" {
      phase three
      serves motor
      Ib 8 A
    }
  }
  board B "Annexe" {
    fed-from A
    phases single
    way 1 radial "Heater" {
      Ib 12 A
    }
  }
}`;
  const linesOf = (text: string) =>
    [...(demandOf(nodeOf(installationOf(text), "A"))?.lines ?? [])].map(([line, { value }]) => [line, value]);

  it("a single-phase board loads the line its feeder is on", () => {
    expect(linesOf(network("phase L2"))).toEqual([
      ["L1", 28],
      ["L2", 20],
      ["L3", 8],
    ]);
  });

  it("a stated design current of the feeder is taken as it stands", () => {
    expect(linesOf(network("phase L2\n      Ib 16 A"))).toEqual([
      ["L1", 28],
      ["L2", 24],
      ["L3", 8],
    ]);
  });

  it("draws for certain what is certain behind the feeder, on its line alone", () => {
    const certain = (kiln: string) => {
      const text = network("phase L2").replace("      Ib 12 A\n", "      Ib 12 A\n      diversity 100 %\n");
      return certainDemand(nodeOf(installationOf(text.replace("phase L1\n      Ib 20 A", kiln)), "A"));
    };
    // 8 A of the lathe in each line, 12 A behind the feeder.
    expect(certain("phase L1")).toBe(20);
    expect(certain("phase L1\n      Ib 10 A\n      diversity 50 %")).toBe(20);
    expect(certain("phase L2\n      Ib 10 A\n      diversity 50 %")).toBe(25);
    const text = network("phase L2").replace("      Ib 12 A\n", "      Ib 12 A\n      diversity 100 %\n");
    // On the line that carries most, whichever it is.
    expect(certainAtOrigin(installationOf(text))).toBe(20);
  });

  it("draws of a board with a diversity of its own that share, of its circuits and of its feeders alike", () => {
    const text = network("phase L2")
      .replace("      Ib 12 A\n", "      Ib 12 A\n      diversity 100 %\n")
      .replace("fed-from supply", "fed-from supply\n    diversity 50 %");
    // Half of the lathe's 8 A and the kiln's 20 A in the one line, of 8 A and 12 A in the other.
    expect(certainDemand(nodeOf(installationOf(text), "A"))).toBe(14);
  });

  it("circuits without a line are spread evenly, and said to be", () => {
    const text = network("phase L3").replace("      phase L1\n", "");
    const demand = demandOf(nodeOf(installationOf(text), "A"));
    expect(demand?.unplaced.map(({ way }) => way.id)).toEqual(["1"]);
    expect(demand?.lines.get("L1")?.value).toBeCloseTo(8 + 20 / 3, 9);
    expect(demand?.greatest.line).toBe("L3");
  });
});

it("diversity never adds, and more load is never less demand", () => {
  const purposes = [
    "lighting",
    "heating-power",
    "motors",
    "instantaneous-heaters",
    "standard-circuits",
    "sockets",
  ] as const;
  const currents = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(
      fc.constantFrom(...purposes),
      fc.constantFrom("household" as const, "shop" as const, "hotel" as const),
      currents,
      fc.double({ min: 0, max: 50, noNaN: true }),
      (purpose, column, loads, more) => {
        const demand = (of: readonly number[]) => diversified({ purpose, column, currents: of }).value;
        const total = loads.reduce((sum, load) => sum + load, 0);
        expect(demand(loads)).toBeLessThanOrEqual(total + 1e-9);
        expect(demand([...loads, more])).toBeGreaterThanOrEqual(demand(loads) - 1e-9);
      },
    ),
  );
});

describe("a demand that is kept from edit to edit", () => {
  /** Sums of an installation as they are after an edit, and as they are of the same text read anew. */
  const sumsOf = (installation: ReturnType<typeof installationOf> | undefined) =>
    installation && {
      origin: originDemand(installation)?.greatest.value,
      steps: originDemand(installation)?.greatest.steps,
      boards: networkOf(installation).nodes.map((node) => [
        node.board.head.name,
        node.parent?.board.head.name,
        [...(demandOf(node)?.lines ?? [])].map(([line, { value, steps }]) => [line, value, steps]),
      ]),
    };

  it("is what the text gives when it is read anew", () => {
    const words = /\b(Ib +\d+|diversity +\d|phase +L\d|feeds D\dS|fed-from +\w)/g;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000 }),
        fc.array(fc.tuple(fc.nat(), fc.integer({ min: 1, max: 3 })), { minLength: 1, maxLength: 8 }),
        (seed, edits) => {
          let file = fileOfText("kept.ways", generate({ ways: 14, waysPerBoard: 5, seed, mix: true }));
          for (const [where, digit] of edits) {
            sumsOf(installationsOf([file])[0]);
            const text = textOf(file.document);
            const places = [...text.matchAll(words)];
            const found = places[where % places.length];
            if (!found) throw new Error("No figure to edit.");
            const before = text.slice(0, found.index + found[0].length).split("\n");
            const [line, character] = [before.length - 1, before.at(-1)?.length ?? 0];
            const range = { start: { line, character: character - 1 }, end: { line, character } };
            file = loadFile("kept.ways", applyEdit(file.document, { range, text: String(digit) }));
            const anew = fileOfText("kept.ways", textOf(file.document));
            expect(sumsOf(installationsOf([file])[0])).toEqual(sumsOf(installationsOf([anew])[0]));
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it("leaves the nodes of boards that hang on another origin as they were", () => {
    const text = generate({ ways: 20, waysPerBoard: 5, seed: 4 });
    const file = fileOfText("kept.ways", text);
    const nodesOf = (of: typeof file) => networkOf(installationsOf([of])[0] as never).nodes;
    const before = nodesOf(file);
    const line = text.split("\n").findIndex((one) => /^ +Ib +\d/.test(one));
    const character = text.split("\n")[line]?.search(/\d/) ?? 0;
    const range = { start: { line, character }, end: { line, character: character + 1 } };
    const after = nodesOf(loadFile("kept.ways", applyEdit(file.document, { range, text: "9" })));
    expect(after[0]).not.toBe(before[0]);
    expect(after.slice(1).every((node, index) => node === before[index + 1])).toBe(true);
  });
});
