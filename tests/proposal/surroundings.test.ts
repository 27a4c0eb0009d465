/** What a proposal takes from the boards and containments around a way, and what it takes for granted without them. */
import { describe, expect, it } from "vitest";
import { studyWay } from "../../server/circuit/way.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { propose } from "../../server/proposal/propose.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { proposed, textWith, whyNot } from "./helpers.ts";

function at(text: string, id: string) {
  const file = fileOfText("a.ways", text);
  expect([...file.model.problems.values()].flat()).toEqual([]);
  const [installation] = installationsOf([file]);
  const [name, way] = id.split("/");
  const place = installation?.boards.find(({ board }) => board.head.name === name);
  const found = place?.board.ways.find((one) => one.id === way);
  if (!place || !found) throw new Error(`The sample has no way ${id}.`);
  const study = studyWay(found, place.context);
  return { file, study, propose: (wants = {}) => propose(study, wants, installation) };
}

const mill = `wayfile 1
installation "Mill" {
  standard BS 7671:2018+A2:2022
  premises commercial
  supply {
    earthing TN-S
    phases three
    Ze 0.30 Ω
    Ipf 1.2 kA
  }
  board A "Main" {
    fed-from supply
    containment C1 conduit 25 mm length 6 m bends 2
    way 1 feeder "Annexe" {
      phase three
      route tray
      length 40 m
      feeds B
    }
    way 2 radial "Kettle" {
      phase L1
      cable singles
      route method B in C1
      length 12 m
      serves water-heater
      load 3 kW
    }
    way 3 ring "Bench" {
      phase L2
      device BS EN 61009 B32 6 kA 30 mA type A
      cable singles line 4 mm² cpc 2.5 mm²
      route method B grouped 2 in C1
      length 40 m
      serves sockets
    }
  }
  board B "Annexe" {
    fed-from A
    way 1 radial "Oven" {
      phase three
      serves heating
      load 18 kW
    }
    way 2 radial "Heater" {
      phase L2
      serves heating
      Ib 12 A
    }
    way 3 radial "Unknown" {
      phase L3
      serves appliance
    }
  }
}
`;

describe("a feeder", () => {
  it("carries the most loaded line of its board, and says of which circuit nothing is known", () => {
    const proposal = at(mill, "A/1").propose();
    // 18 kW over three lines of 230 V, and 12 A on L2 besides, with no diversity for heating in a shop's column.
    expect(proposal.decisions[0]?.result).toMatch(/^Ib = [\d.]+ A, the demand of board B/);
    expect(proposal.decisions[0]?.steps.at(-1)?.formula).toBe("demand of L2");
    expect(proposal.open).toContain("No load is given for B/3: the feeder carries more than this.");
    expect(proposal.outcome).toBe("fits");
  });

  it("goes by its own design current where that is written, and takes the diversity that is", () => {
    expect(at(mill.replace("feeds B", "feeds B\n      Ib 50 A"), "A/1").propose().decisions[0]?.result).toBe(
      "Ib = 50 A, as written",
    );
    const whole = at(mill, "A/1").propose().decisions[0]?.result ?? "";
    const half =
      at(mill.replace("feeds B", "feeds B\n      diversity 50 %"), "A/1").propose().decisions[0]?.result ?? "";
    const ampsOf = (text: string): number => Number(/[\d.]+/.exec(text)?.[0]);
    expect(ampsOf(half)).toBeCloseTo(ampsOf(whole) / 2, 0);
  });

  it("has nothing to go by where its board tells nothing", () => {
    const empty = mill.replace(/load 18 kW|Ib 12 A/g, "");
    expect(at(empty, "A/1").propose().reasons).toEqual(["the design current (Ib), or the loads"]);
  });
});

describe("what would be", () => {
  it("is calculated with another current or load, whatever is written", () => {
    expect(at(mill, "A/2").propose({ Ib: 28 }).device).toBe("device BS EN 60898 B32 6 kA");
    const { decisions } = at(mill, "A/2").propose({ power: 4600 });
    expect(decisions[0]).toMatchObject({ result: "Ib = 20 A, for the load requested" });
    expect(decisions[0]?.steps[0]?.numbers).toBe("4600 W / 230 V");
  });
});

describe("a shared conduit", () => {
  it("counts its circuits where the route does not, and the count is written with the rest", () => {
    const { file, study, propose: ask } = at(mill, "A/2");
    const proposal = ask();
    // 2 circuits: 0.8. 1.5 mm² carries 17.5 A × 0.8 = 14 A, less than 16 A.
    expect(whyNot(proposal, "1.5 mm²")).toBe("capacity of the cable: Iz 14 A against In 16 A");
    expect(proposal.decisions).toContainEqual(expect.objectContaining({ title: "Grouping" }));
    expect(textWith(file, study, proposal)).toMatch(/route {2,}method B {2}in C1 {2}grouped 2/);
  });

  it("is held against its room with the cable proposed, and the size that would do is named", () => {
    const proposal = at(mill, "A/2").propose({ Ib: 40 });
    const [full] = proposal.decisions.filter(({ title }) => title === "Containment");
    // Ring: 4 × 43 + 2 × 30. With bends 16 mm² takes 145 each.
    expect(full?.result).toMatch(/^C1, 25 mm conduit: [\d.]+ against 333$/);
    expect(proposal.open).toContain("C1 is too small for this cable beside the others. Make it 32 mm conduit.");
    expect(whyNot(proposal, "25 mm conduit")).toMatch(/ with ways 2, 3, and it takes 333$/);
  });
});

describe("a conduit of its own", () => {
  const kiln = (route: string) =>
    proposed(`way 1 radial "Kiln" {\n  route ${route}\n  length 9 m\n  Ib 30 A\n  serves heating\n}`);

  it("gets the size that holds the cable, and the next smaller is ruled out by its numbers", () => {
    const { proposal, after } = kiln("conduit method B length 9 m bends 2");
    // 6 mm² takes 58 each: 174, where 20 mm takes 149 and 25 mm 275 over 9 m with two bends.
    expect(proposal.cable).toBe("cable singles line 4 mm² cpc 4 mm²");
    expect(after).toMatch(/route {2,}conduit \d+ mm {2}method B/);
    const [decided] = proposal.decisions.filter(({ title }) => title === "Containment");
    const size = Number(/^\d+/.exec(decided?.result ?? "")?.[0]);
    expect(after).toContain(`conduit ${size} mm`);
    const below = { 20: 16, 25: 20, 32: 25 }[size];
    expect(whyNot(proposal, `${below} mm conduit`)).toMatch(/^the cables in it make 129, and it takes \d+$/);
  });

  it("is made larger where it is too small, and left alone where it is not", () => {
    expect(kiln("conduit 16 mm method B length 9 m bends 2").after).not.toContain("16 mm ");
    expect(kiln("conduit 32 mm method B length 9 m bends 2").after).toContain("conduit 32 mm");
  });

  it("is taken at the worst where nothing is said of its run, and then nothing is written of it", () => {
    const { proposal, after } = kiln("conduit 16 mm method B");
    expect(proposal.open).toContainEqual(expect.stringMatching(/^The conduit was taken at 10 m with 2 bends/));
    expect(proposal.open).toContainEqual(expect.stringMatching(/^16 mm conduit would be too small then/));
    expect(after).toContain("conduit 16 mm");
  });

  it("is not sized for a sheathed cable, which is said", () => {
    const { proposal } = kiln("conduit method B\n  cable flat-twin");
    expect(proposal.open).toContainEqual(expect.stringMatching(/^The conduit was not sized: .*diameter/));
  });
});

describe("without a route", () => {
  const lines = 'way 1 radial "Heater" {\n  length 9 m\n  Ib 13 A\n  serves heating\n}';

  it("a usual one is assumed where that is asked for; it is said, and nothing is to be written", () => {
    const { proposal } = proposed(lines, { premises: "dwelling" }, { assumeRoute: true });
    expect(proposal.outcome).toBe("fits");
    expect(proposal.fix).toBeUndefined();
    expect(proposal.open[0]).toBe(
      "The route was assumed: route wall method A. Write how the cable runs, then size it again.",
    );
    expect(proposed(lines, { premises: "commercial" }, { assumeRoute: true }).proposal.open[0]).toContain(
      "route conduit method B",
    );
  });

  it("nothing is proposed otherwise, and a route that is written without its method is kept, with the usual method of its kind", () => {
    expect(proposed(lines).proposal.outcome).toBe("missing");
    const half = lines.replace("length", "route free-air\n  length");
    const { proposal, after } = proposed(half, {}, { assumeRoute: true });
    expect([proposal.outcome, proposal.open]).toEqual(["fits", []]);
    expect(after).toMatch(/^ *route +free-air$/m);
  });
});
