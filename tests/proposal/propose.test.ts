import { describe, expect, it } from "vitest";
import { studyWay } from "../../server/circuit/way.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { propose } from "../../server/proposal/propose.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { lineOf, proposed, whyNot } from "./helpers.ts";

const heater = (first: string, rest = "Ib 13 A") =>
  `way 1 radial "Heater" {\n  ${first}\n  route clipped method C\n  length 18 m\n  ${rest}\n  serves water-heater\n}`;

describe("the device", () => {
  it("is the next rating above the load, and the one below is ruled out", () => {
    const { proposal } = proposed(heater("points 1", "Ib 17 A"));
    expect(proposal.device).toBe("device BS EN 60898 B20 6 kA");
    expect(whyNot(proposal, "B16")).toBe("In 16 A is below Ib 17 A");
  });

  it("passes over ratings that the table of loop limits does not print", () => {
    const { proposal } = proposed(heater("points 1", "Ib 12 A"));
    expect(proposal.device).toBe("device BS EN 60898 B16 6 kA");
    expect(whyNot(proposal, "B13")).toMatch(/^not a usual rating/);
  });

  it("takes the type its load asks for, or the one that is written", () => {
    const motor = heater("points 1").replace("water-heater", "motor");
    expect(proposed(motor).proposal.device).toBe("device BS EN 60898 C16 6 kA");
    const written = motor.replace("points 1", "device BS EN 60898 D10 6 kA").replace("18 m", "4 m");
    expect(proposed(written).proposal.device).toBe("device BS EN 60898 D16 6 kA");
  });

  describe("where a fault to earth makes the cable grow", () => {
    const far = (device: string, use: string, length = 40) =>
      proposed(heater(device).replace("18 m", `${length} m`).replace("water-heater", use), {
        supply: "earthing TN-S\nZe 0.45 Ω\nIpf 0.9 kA",
      }).proposal;

    it("is of a gentler type if the load allows it, and what the type written would have needed is said", () => {
      const proposal = far("device BS EN 60898 D16 6 kA", "motor", 18);
      expect(proposal.device).toBe("device BS EN 60898 C16 6 kA");
      expect(proposal.cable).toBe("cable flat-twin line 1.5 mm² cpc 1.0 mm²");
      expect(whyNot(proposal, "D16")).toMatch(
        /^needs 6 mm², cpc 2.5 mm²: 4 mm², cpc 1.5 mm² fails on loop impedance: Zs 0.81 Ω warm/,
      );
      expect(proposal.decisions.map(({ title }) => title)).toContain("Devices compared");
    });

    it("is not of a type that the load's inrush would trip, which is said", () => {
      const proposal = far("points 1", "motor");
      expect(proposal.device).toBe("device BS EN 60898 C16 6 kA");
      expect(whyNot(proposal, "B16")).toMatch(/^would need .*, but a motor draws several times its current/);
      expect(whyNot(proposal, "16 A BS 88-2")).toMatch(/^would need .*, but a fuse needs a board that takes it/);
    });

    it("does not lean on an RCD alone, but says what it would spare", () => {
      const proposal = far("points 1", "motor", 60);
      expect(proposal.device).not.toContain("61009");
      expect(whyNot(proposal, "C16 BS EN 61009 30 mA")).toMatch(
        /^would need [\d.]+ mm², cpc [\d.]+ mm², but at [\d.]+ Ω only its RCD disconnects/,
      );
    });

    it("stays as it is written where that is asked for", () => {
      const lines = heater("device BS EN 60898 D16 6 kA");
      const { proposal } = proposed(lines, {}, { keepDevice: true });
      expect(proposal.device).toBe("device BS EN 60898 D16 6 kA");
      expect(whyNot(proposal, "C16")).toMatch(/^(?:needs|would need) /);
    });

    it("is a fuse where no breaker fits, and that is said", () => {
      const lines = heater("points 1", "Ib 38 A").replace("water-heater", "motor");
      const { proposal } = proposed(lines, { supply: "earthing TN-S\nZe 0.62 Ω\nIpf 0.9 kA" });
      expect(proposal.device).toBe("device BS 88-2 40 A");
      expect(proposal.open).toContainEqual(expect.stringMatching(/^Nothing fits behind a breaker/));
      expect(whyNot(proposal, "C40")).toMatch(/^No flat-twin cable fits behind C40/);
    });
  });

  it("is kept in its rating where that is asked for, and said not to carry the load where it does not", () => {
    const lines = heater("device BS EN 60898 B32 6 kA");
    expect(proposed(lines, {}, { keepDevice: true }).proposal.device).toBe("device BS EN 60898 B32 6 kA");
    const small = proposed(heater("device BS EN 60898 B10 6 kA"), {}, { keepDevice: true }).proposal;
    expect([small.outcome, small.device]).toEqual(["none", undefined]);
  });

  it("breaks the fault current of its board", () => {
    const { proposal } = proposed(heater("points 1"), { supply: "earthing TN-S\nZe 0.02 Ω\nIpf 8.6 kA" });
    expect(proposal.device).toBe("device BS EN 60898 B16 10 kA");
    const fuse = proposed(heater("device BS 3036"), { supply: "earthing TN-S\nZe 0.1 Ω\nIpf 2.3 kA" }).proposal;
    expect(fuse.outcome).toBe("none");
    expect(fuse.reasons).toEqual(["The device breaks 1 kA; up to 2.3 kA may flow at this board."]);
  });

  it("has an RCD where a rule asks for one and none stands before it", () => {
    const bathroom = heater("place bathroom");
    expect(proposed(bathroom).proposal.device).toBe("device BS EN 61009 B16 6 kA 30 mA type A");
    const board = "fed-from supply\nmain-switch BS EN 60947-3 100 A\nrcd east BS EN 61008 63 A 30 mA type A";
    const behind = bathroom.replace("place", "behind east\n  place");
    expect(proposed(behind, { board }).proposal.device).toBe("device BS EN 60898 B16 6 kA");
    const tt = proposed(heater("points 1"), { supply: "earthing TT\nZe 40 Ω\nIpf 0.1 kA" }).proposal;
    expect(tt.device).toBe("device BS EN 61009 B16 6 kA 30 mA type A");
  });

  it("has the RCD its place asks for, and one of its own where that is asked", () => {
    const deviceFor = (first: string, setting = {}) => proposed(heater(first), setting).proposal.device;
    expect(deviceFor("place agricultural")).toBe("device BS EN 61009 B16 6 kA 300 mA type A");
    const farm = { board: "fed-from supply\nplace agricultural\nmain-switch BS EN 61008 100 A 300 mA type A delayed" };
    expect(deviceFor("points 1", farm)).toBe("device BS EN 60898 B16 6 kA");
    const electrode = { supply: "earthing TT\nZe 180 Ω\nIpf 0.1 kA" };
    expect(deviceFor("place agricultural", electrode)).toBe("device BS EN 61009 B16 6 kA 30 mA type A");
    const board = "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A";
    const berth = heater("behind east\n  place marina").replace("water-heater", "sockets");
    expect(proposed(berth, { board }).proposal.device).toBe("device BS EN 61009 B16 6 kA 30 mA type A");
    expect(proposed(berth.replace("marina", "ordinary"), { board }).proposal.device).toBe(
      "device BS EN 60898 B16 6 kA",
    );
  });

  it("keeps the waveform type of an RCBO that is strong enough, and strengthens one that is not", () => {
    const rcbo = (type: string) => heater(`device BS EN 61009 B6 6 kA 30 mA type ${type}\n  place bathroom`);
    expect(proposed(rcbo("B")).proposal.device).toBe("device BS EN 61009 B16 6 kA 30 mA type B");
    expect(proposed(rcbo("AC")).proposal.device).toBe("device BS EN 61009 B16 6 kA 30 mA type A");
  });
});

describe("the load", () => {
  it("is what its power draws at its power factor", () => {
    const { proposal } = proposed(heater("power-factor 80 %", "load 4 kW"));
    expect(proposal.decisions[0]?.result).toBe("Ib = 21.7 A, from its load");
    expect(proposal.decisions[0]?.steps.map(({ numbers }) => numbers)).toEqual(["4000 W / (230 V × 0.8)"]);
    expect(proposal.device).toBe("device BS EN 60898 B25 6 kA");
  });

  it("is said to be assumed where it is, and from what", () => {
    const sockets = 'way 1 ring "Sockets" {\n  route clipped method C\n  length 40 m\n  serves sockets\n}';
    expect(proposed(sockets).proposal.open).toContain("The design current was assumed: what a ring is made for.");
    const device = heater("device BS EN 60898 B20 6 kA", "points 1");
    expect(proposed(device).proposal.decisions[0]?.result).toMatch(/^Ib = 20 A, assumed: the rating of the device/);
  });
});

describe("the cable", () => {
  it("carries the device on the worst stretch of its route", () => {
    const lines = heater("points 1", "route wall method 103\n  Ib 13 A");
    const { proposal } = proposed(lines);
    expect(lineOf(proposal)).toBe(4);
    expect(whyNot(proposal, "2.5 mm²")).toBe(
      "capacity of the cable: Iz 13.5 A on its worst stretch (wall) against In 16 A",
    );
  });

  it("is armoured for the ground and single-core for conduit, unless it is written", () => {
    const by = (route: string) => proposed(heater("points 1").replace("clipped method C", route)).proposal.cable;
    expect(by("buried")).toMatch(/^cable armoured 90 °C line 1.5 mm² cpc 1.5 mm²$/);
    expect(by("conduit")).toMatch(/^cable singles /);
    expect(by("conduit\n  cable multicore")).toMatch(/^cable multicore /);
  });

  it("keeps the insulation that is written though no size is", () => {
    const { proposal, after } = proposed(heater("cable singles 90 °C").replace("clipped method C", "conduit method B"));
    expect(proposal.cable).toBe("cable singles 90 °C line 1.5 mm² cpc 1.5 mm²");
    expect(after).toMatch(/singles 90 °C {2}line 1.5 mm²/);
    expect(proposal.open).toContainEqual(expect.stringMatching(/^The cable is rated at 90 °C/));
  });

  it("keeps what is said of it besides its sizes", () => {
    const { after } = proposed(heater("cable  multicore  line 1.0 mm² cpc-by conduit cores 3   # grey"));
    expect(after).toContain("line 1.5 mm²  cpc-by conduit  cores 3  # grey\n");
  });

  it("stays the cable type it is by name where that is the very one", () => {
    const before =
      "cable-type twin flat-twin line 1.5 mm² cpc 1.0 mm²\ncable-type heavy flat-twin line 10 mm² cpc 4 mm²";
    expect(proposed(heater("cable twin"), { before }).after).toContain("cable        twin\n");
    expect(proposed(heater("cable heavy"), { before }).after).toContain(
      "cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²\n",
    );
  });

  it("says where its breaker may let more energy through than its protective conductor bears", () => {
    const at = (Ipf: string) =>
      proposed(heater("points 1", "Ib 30 A"), { supply: `earthing TN-S\nZe 0.05 Ω\nIpf ${Ipf}` });
    expect(at("1.2 kA").proposal.open).toEqual([]);
    expect(at("5.8 kA").proposal.open).toEqual([
      expect.stringMatching(/^At 5\.8 kA a class 3 breaker may let through \d+ A²s, and the cpc withstands 29756 A²s/),
    ]);
  });
});

describe("what is not known", () => {
  it("is named where nothing can be proposed without it", () => {
    const { proposal } = proposed('way 1 radial "Heater" {\n  serves heating\n}');
    expect(proposal.outcome).toBe("missing");
    expect(proposal.reasons).toEqual([
      "the design current (Ib), or the loads",
      "the route: how the cable runs decides what it can carry",
    ]);
  });

  it("is said where the proposal goes without it", () => {
    const { proposal } = proposed(heater("points 1").replace("  length 18 m\n", ""), { supply: "earthing TN-S" });
    expect(proposal.open).toEqual([
      "The length is not written: neither the voltage drop nor the loop was calculated.",
      "Without a fault current the breaker's let-through energy was not compared with the cpc.",
      "No fault current is written for this board: the breaking capacity is the usual one, not judged.",
    ]);
  });
});

describe("a board further out", () => {
  const text = (feeder: string) => `wayfile 1
installation "Slipway" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.20 Ω
    Ipf 1.2 kA
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Boathouse" {
      device BS 88-3 32 A
      cable armoured 70 °C line ${feeder} cpc ${feeder}
      length 30 m
      Ib 30 A
      feeds B
    }
  }
  board B "Boathouse" {
    fed-from A
    way 1 radial "Winch" {
      route clipped method C
      length 20 m
      Ib 13 A
      serves appliance
    }
  }
}
`;

  it("leaves less of the drop and of the loop the thinner its feeder is", () => {
    const sizeBehind = (feeder: string): number => {
      const file = fileOfText("a.ways", text(feeder));
      const [installation] = installationsOf([file]);
      const place = installation?.boards[1];
      const way = place?.board.ways[0];
      if (!place || !way) throw new Error("The sample has no second board.");
      const proposal = propose(studyWay(way, place.context), {}, installation);
      expect(proposal.outcome).toBe("fits");
      return lineOf(proposal);
    };
    // The feeder takes 11, 7.3 or 2.8 mV × 30 A × 30 m: 4.30, 2.86 or 1.10 %. For 13 A over 20 m 5 % leaves 10 mm²
    // (0.50 %, as 6 mm² takes 0.83 %), 2.5 mm² (2.03 %, as 1.5 mm² takes 3.28 %) and 1.5 mm².
    expect(["4 mm²", "6 mm²", "16 mm²"].map(sizeBehind)).toEqual([10, 2.5, 1.5]);
  });
});

describe("what goes with a proposal", () => {
  it("is an RCD of the way's own, where a rule requires one and the device is a fuse", () => {
    const { proposal, after } = proposed(
      'way 1 radial "Sockets" {\n  device BS 88-3 20 A\n  route clipped method C\n  length 12 m\n  serves sockets\n  Ib 16 A\n}',
    );
    expect(proposal.rcd).toBe("rcd BS EN 61008 30 mA type A");
    expect(after).toMatch(/rcd +BS EN 61008 30 mA +type A/);
  });

  it("is a breaker that holds while the motor starts", () => {
    const saw =
      'way 1 radial "Saw" {\n  device BS EN 60898 B20 6 kA\n  route clipped method C\n  length 12 m\n  serves motor\n  Ib 19 A\n  overload 19 A\n  starting direct 118 A\n}';
    const { proposal } = proposed(saw);
    expect(proposal.device).toBe("device BS EN 60898 B25 6 kA");
    expect(whyNot(proposal, "B20")).toMatch(/starts with 118 A, and type B opens between 60 A and 100 A/);
  });

  it("is a cable type whose figures the schedule states, never its figures with another size", () => {
    const types = [
      'cable-type m4 mineral line 4 mm² cpc 4 mm² carries 40 A drop 10 mV r1 4.61 mΩ r2 4.61 mΩ by "Own copy"',
      'cable-type m6 mineral line 6 mm² cpc 6 mm² carries 51 A drop 6.8 mV r1 3.08 mΩ r2 3.08 mΩ by "Own copy"',
    ].join("\n");
    const way = (Ib: number) =>
      `way 1 radial "Kiln" {\n  cable m4\n  route clipped method C\n  length 12 m\n  serves heating\n  Ib ${Ib} A\n}`;
    expect(proposed(way(30), { before: types }).proposal.cable).toBe("cable m4");
    expect(proposed(way(44), { before: types }).proposal.cable).toBe("cable m6");
    expect(proposed(way(60), { before: types }).proposal.outcome).toBe("none");
    const inline =
      'way 1 radial "Kiln" {\n  cable mineral line 4 mm² cpc 4 mm² carries 40 A drop 10 mV r1 4.61 mΩ r2 4.61 mΩ\n  route clipped method C\n  length 12 m\n  serves heating\n  Ib 44 A\n}';
    expect(proposed(inline).proposal.outcome).toBe("none");
  });
});
