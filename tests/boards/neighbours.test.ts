/** What stands before and behind a board: whoever keeps an answer about it goes by whether that is still the same. */
import { describe, expect, it } from "vitest";
import { neighboursOf, sameNeighbours } from "../../server/boards/network.ts";
import type { Installation } from "../../server/model/installation.ts";
import { nodeOf } from "../helpers/place.ts";
import { OpenText } from "../workspace/open-text.ts";

/** Board A feeds B and D, and B feeds C. */
const text = `wayfile 1
installation "Rope walk" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.31 Ω
  }
  board A "Intake" {
    fed-from supply
    way 1 feeder "Stores" {
      feeds B
    }
    way 2 feeder "Yard" {
      feeds D
    }
  }
  board B "Stores" {
    fed-from A
    way 1 feeder "Loft" {
      feeds C
    }
  }
  board C "Loft" {
    fed-from B
    way 1 radial "Lights" {
      length 12 m
    }
  }
  board D "Yard" {
    fed-from A
    way 1 radial "Pump" {
      length 30 m
    }
  }
}
`;

/** Of each board, whether what stands round it is the same after an edit. */
async function sameAfter(before: string, by: string): Promise<Readonly<Record<string, boolean>>> {
  const open = new OpenText(text);
  // A board that was never checked was never read, and is another one once it is.
  const as = async (now: string) => (await open.as(now)).projects[0]?.result.installations[0] as Installation;
  const was = await as(text);
  const rounds = ["A", "B", "C", "D"].map((name) => [name, neighboursOf(nodeOf(was, name))] as const);
  const is = await as(text.replace(before, by));
  expect(is).not.toBe(was);
  return Object.fromEntries(
    rounds.map(([name, round]) => [name, sameNeighbours(round, neighboursOf(nodeOf(is, name)))]),
  );
}

describe("what stands round a board", () => {
  it("is the same for all where the supply alone is another", async () => {
    expect(await sameAfter("Ze 0.31 Ω", "Ze 0.35 Ω")).toEqual({ A: true, B: true, C: true, D: true });
  });

  // The feeder of a board carries what all boards in its branch draw. The board at the origin has no feeder.
  it.each([
    ["the last of a branch", "length 12 m", "length 15 m", { A: false, B: false, C: false, D: true }],
    ["a board at the origin's other end", "length 30 m", "length 33 m", { A: false, B: true, C: true, D: false }],
    [
      "the board that feeds it",
      'way 2 feeder "Yard"',
      'way 3 feeder "Yard"',
      { A: false, B: false, C: false, D: false },
    ],
  ])("is another where %s is", async (_, before, by, wanted) => {
    expect(await sameAfter(before, by)).toEqual(wanted);
  });

  it("is another where a board goes", async () => {
    expect(await sameAfter("feeds C", "")).toMatchObject({ A: false, B: false, C: false, D: true });
  });
});
