import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const PME = "earthing TN-C-S\nZe 0.20 Ω\nIpf 1.4 kA";
const TT = "earthing TT\nelectrode rod 40 Ω\nIpf 1.4 kA";
const about = /^(place\/|rcd\/(missing|sensitivity|delayed))/;

/** What places have to say of a text, as `check severity`. */
const said = (text: string): string[] =>
  findingsOf(text)
    .filter(({ check }) => about.test(check))
    .map(({ check, severity }) => `${check} ${severity}`);

const way = (lines: readonly string[], kind = "radial", id = "1") =>
  [`way ${id} ${kind} "Circuit" {`, ...lines.map((line) => `  ${line}`), "}"].join("\n");
const of = (lines: readonly string[], setting: Setting = {}) => said(inSetting(way(lines), setting).text);
const onBoard = (place: string, lines: readonly string[], setting: Setting = {}) =>
  of(lines, { ...setting, board: `fed-from supply\n${place}` });

const rcbo = (rating: string, residual = "30 mA") => `device BS EN 61009 ${rating} 6 kA ${residual} type A`;
const mcb = (rating: string) => `device BS EN 60898 ${rating} 6 kA`;
const joined = "supplementary-bonding fitted";

describe("which RCD a place asks for", () => {
  it.each([
    ["agricultural", "sockets", mcb("C40"), ["place/agricultural-without-rcd error"]],
    ["agricultural", "sockets", rcbo("C40", "300 mA"), ["rcd/sensitivity-too-high error"]],
    ["agricultural", "sockets", rcbo("C40", "100 mA"), []],
    ["agricultural", "sockets", rcbo("C32", "100 mA"), ["rcd/sensitivity-too-high error"]],
    ["agricultural", "lighting", mcb("B6"), ["place/agricultural-without-rcd error"]],
    ["agricultural", "lighting", rcbo("B6", "300 mA"), []],
    ["agricultural", "lighting", rcbo("B6", "500 mA"), ["rcd/sensitivity-too-high error"]],
    ["agricultural", "selv", mcb("B6"), []],
    ["pool", "heating", mcb("B16"), ["place/pool-without-rcd error"]],
    ["pool", "heating", rcbo("B16", "100 mA"), ["rcd/sensitivity-too-high error"]],
    ["construction", "sockets", mcb("C63"), ["place/construction-without-rcd error"]],
    ["construction", "sockets", rcbo("C63", "500 mA"), []],
    ["construction", "lighting", mcb("C10"), []],
    ["marina", "sockets", rcbo("C63", "100 mA"), ["rcd/sensitivity-too-high error"]],
    ["marina", "sockets", rcbo("C80", "300 mA"), []],
    ["caravan", "sockets", rcbo("C63"), []],
    ["caravan", "lighting", mcb("C10"), []],
  ])("%s, %s behind %s", (place, use, device, expected) => {
    expect(of([device, `serves ${use}`, `place ${place}`, joined])).toEqual(expected);
  });

  it("none of a circuit whose device is not known well enough to tell", () => {
    expect(of(["serves sockets", "place agricultural", joined])).toEqual([]);
    expect(of(["device", "serves lighting", "place agricultural", joined])).toEqual([]);
  });

  it("one of a feeder that lies on a farm, which is disputed, and none of spares", () => {
    const feeder =
      'way 1 feeder "Barn" {\n device BS 88-2 63 A 80 kA gG\n feeds B\n place agricultural\n}\nway 2 spare';
    const board = '}\nboard B "Barn" {\nfed-from A';
    expect(said(inSetting(`${feeder}\n${board}`).text)).toEqual(["place/farm-feeder-without-rcd warning"]);
  });

  it("none at the reduced low voltage of sites", () => {
    const supply = "earthing TN-S\nU0 55 V\nIpf 1 kA";
    expect(of([mcb("C16"), "serves sockets", "place construction"], { supply })).toEqual([]);
  });

  it("none that the 16th Edition did not have, and one that it is told of where the work is old", () => {
    const lines = [mcb("B6"), "serves lighting", "place agricultural"];
    expect(of(lines, { standard: "BS 7671:2001" })).toEqual([]);
    expect(of(lines, { work: "existing" })).toEqual(["place/agricultural-without-rcd information"]);
  });

  it("one RCD upstream is enough where it need not be each circuit's own", () => {
    const board = "fed-from supply\nmain-switch BS EN 61008 100 A 300 mA type A delayed";
    expect(of([mcb("C20"), "serves motor", "place agricultural", joined], { board })).toEqual([]);
  });

  it("and the general rule speaks first, with the place beside it", () => {
    const [finding] = foundBy(
      "rcd/missing-for-sockets",
      inSetting(way([mcb("B16"), "serves sockets", "place agricultural", joined])).text,
    );
    expect(finding?.related.map(({ message }) => message)).toContain("This line requires an RCD as well.");
    expect(of([mcb("B16"), "serves sockets", "place agricultural", joined])).toEqual(["rcd/missing-for-sockets error"]);
  });

  it("a departure from the general rule excuses it from that alone", () => {
    const lines = [mcb("B16"), "serves sockets", "place agricultural", joined, 'departure 411.3.3 "Labelled"'];
    expect(of(lines)).toEqual(["place/agricultural-without-rcd error"]);
    expect(of([...lines, 'departure 705.411.1 "Dry store"'])).toEqual([]);
  });
});

describe("the place of a board", () => {
  const light = [mcb("B6"), "serves lighting"];

  it("is that of its ways", () => {
    expect(onBoard("place agricultural", [...light, joined])).toEqual(["place/agricultural-without-rcd error"]);
  });

  it("gives way to a place of the way's own, which may be none of these", () => {
    expect(onBoard("place agricultural", [...light, "place bathroom"])).toEqual(["rcd/missing-in-bathroom error"]);
    expect(onBoard("place agricultural", [...light, "place ordinary"])).toEqual([]);
  });

  it("is added to by how the place is used", () => {
    expect(onBoard("place agricultural", [...light, "place outdoors", joined])).toEqual([
      "place/agricultural-without-rcd error",
    ]);
    expect(onBoard("place skilled-only", [mcb("B16"), "serves sockets"])).toEqual([]);
  });

  it("is not guessed at while the way's own is being typed", () => {
    expect(onBoard("place agricultural", [...light, "place"])).toEqual([]);
    expect(onBoard("place agricultural", [...light, "place farm"])).toEqual([]);
  });

  it("does not reach the boards behind it", () => {
    const text = inSetting(
      `${way(["device BS 88-2 63 A 80 kA gG", "feeds B"], "feeder")}
}
board B "House" {
fed-from A
${way(light)}`,
      { board: "fed-from supply\nplace agricultural" },
    ).text;
    expect(said(text)).toEqual([]);
  });

  it("is named beside a finding that stands on the way", () => {
    const setting = { board: "fed-from supply\nplace agricultural" };
    const [finding] = foundBy("place/agricultural-without-rcd", inSetting(way([...light, joined]), setting).text);
    expect(finding?.related.map(({ message }) => message)).toContain("The location stated for the whole board.");
  });
});

describe("the sockets of pitches and berths", () => {
  const two = (board: string, first: string, second: string) =>
    said(
      inSetting(
        [way([first, "serves sockets", "place marina"]), way([second, "serves lighting"], "radial", "2")].join("\n"),
        { board: `fed-from supply\n${board}` },
      ).text,
    );
  const shared = "rcd east BS EN 61008 63 A 30 mA type A";

  it.each([
    ["the board's RCD with another circuit", shared, `${mcb("C16")}\nbehind east`, `${mcb("B6")}\nbehind east`, 1],
    ["the main switch", "main-switch BS EN 61008 63 A 30 mA type A", mcb("C16"), mcb("B6"), 1],
    ["nothing, being alone behind the board's RCD", shared, `${mcb("C16")}\nbehind east`, mcb("B6"), 0],
    [
      "nothing, with an RCD of its own behind a coarser one",
      "main-switch BS EN 61008 63 A 30 mA type A",
      rcbo("C16"),
      mcb("B6"),
      0,
    ],
    [
      "nothing, with a delayed RCD upstream",
      "main-switch BS EN 61008 63 A 100 mA type A delayed",
      rcbo("C16"),
      mcb("B6"),
      0,
    ],
  ])("share %s", (_, board, first, second, count) => {
    expect(two(board, first, second)).toEqual(Array(count).fill("place/socket-shares-rcd error"));
  });

  it("are one to a device", () => {
    const lines = [rcbo("C32"), "serves sockets", "place caravan"];
    expect(of([...lines, "points 4"])).toEqual(["place/several-sockets error"]);
    expect(of([...lines, "points 1"])).toEqual([]);
    expect(of([rcbo("C32"), "serves sockets", "place construction", "points 4"])).toEqual([]);
  });

  it("are offered an RCBO of their own", () => {
    const text = inSetting(
      [
        way([mcb("C16"), "behind east", "serves sockets", "place marina"]),
        way([mcb("B6"), "behind east", "serves lighting"], "radial", "2"),
      ].join("\n"),
      { board: `fed-from supply\n${shared}` },
    ).text;
    const after = fixed("place/socket-shares-rcd", text);
    expect(after).toContain("device BS EN 61009 C16 6 kA 30 mA type A");
    expect(said(after)).toEqual([]);
  });
});

describe("the earth of a PME supply", () => {
  const pitch = [rcbo("C16"), "serves sockets", "place caravan"];

  it.each([
    ["a pitch", pitch, PME, ["place/combined-earth error"]],
    ["a pitch with an electrode of its own", [...pitch, "earthing TT"], PME, []],
    ["a pitch of a TN-S supply", pitch, "earthing TN-S\nZe 0.3 Ω\nIpf 1 kA", []],
    ["a pitch of a TT supply", pitch, TT, []],
    ["a pitch of a generator of its own", pitch, `${PME}\nsource private`, []],
    ["the lights of a camp site", [mcb("B6"), "serves lighting", "place caravan"], PME, []],
    ["a site", [rcbo("C16"), "serves sockets", "place construction"], PME, ["place/combined-earth error"]],
    ["a charging point", [rcbo("C32"), "serves ev-charger"], PME, ["place/charger-combined-earth error"]],
    ["one that disconnects", [rcbo("C32"), "serves ev-charger", 'open-PEN "In the unit"'], PME, []],
    ["one with an electrode", [rcbo("C32"), "serves ev-charger", "earthing TT"], PME, []],
    ["one half described", [rcbo("C32"), "serves ev-charger", "open-PEN"], PME, []],
    ["one whose electrode is being typed", [rcbo("C32"), "serves ev-charger", "earthing"], PME, []],
    ["an unknown earthing", [rcbo("C32"), "serves ev-charger"], "Ipf 1 kA", []],
  ])("and %s", (_, lines, supply, expected) => {
    expect(of(lines, { supply })).toEqual(expected);
  });

  it("is not spoken of while the board's electrode is being typed", () => {
    expect(onBoard("place caravan\nearthing T", pitch.slice(0, 2), { supply: PME })).toEqual([]);
  });

  it("does not excuse a pitch for a device that disconnects", () => {
    expect(of([...pitch, 'open-PEN "Relay in the pillar"'], { supply: PME })).toEqual(["place/combined-earth error"]);
  });

  it("is said once of a board, and put right there", () => {
    const board = "fed-from supply\nplace marina";
    const berths = [1, 2, 3].map((id) => way([rcbo("C16"), "serves sockets"], "radial", String(id))).join("\n");
    const text = inSetting(berths, { board, supply: PME }).text;
    expect(said(text)).toEqual(["place/combined-earth error"]);
    const after = fixed("place/combined-earth", text);
    expect(after).toContain("place marina\nearthing TT");
    expect(said(after)).toEqual([]);
  });
});

describe("an electrode of a board's own", () => {
  const text = (more: string) => `wayfile 1
installation "Quay" {
  standard BS 7671:2018+A2:2022
  stage tested
  supply {
    earthing TN-C-S
    Ze 0.20 Ω
    Ipf 1.1 kA
  }
  board A "Intake" {
    fed-from supply
    Zdb 0.21 Ω
    Ipf 1.05 kA
    way 1 feeder "Pontoon" {
      device BS 88-2 40 A 80 kA gG
      feeds B
      live 2026-03-05 { Zs 0.31 Ω }
    }
  }
  board B "Pontoon" {
    fed-from A
    ${more}
    Zdb 52 Ω
    Ipf 0.7 kA
    way 1 radial "Berth" {
      device BS EN 61009 C16 6 kA 30 mA type A
      serves sockets
      place marina
      dead 2026-03-04 { R1+R2 0.20 Ω }
      live 2026-03-05 { Zs 52.3 Ω }
    }
  }
}`;
  const loops = (sample: string) =>
    findingsOf(sample)
      .filter(({ check }) => /^(loop|fault)\//.test(check))
      .map(({ check }) => check);

  it("is what its circuits are judged by", () => {
    expect(loops(text("earthing TT"))).toEqual([]);
    expect(loops(text(""))).toEqual(expect.arrayContaining(["loop/relies-on-rcd", "loop/board-disagrees"]));
  });

  it("needs an RCD for every circuit", () => {
    const bare = text("earthing TT").replace("BS EN 61009 C16 6 kA 30 mA type A", "BS EN 60898 C16 6 kA");
    expect(said(bare)).toContain("rcd/missing-in-tt error");
  });

  it("is judged with the RCD that relies on it", () => {
    const with84 = text("earthing TT\n    electrode rod 84 Ω");
    expect(loops(with84)).toEqual([]);
    expect(loops(with84.replace("84 Ω", "1700 Ω"))).toContain("loop/electrode-over-limit");
    expect(loops(with84.replace("84 Ω", "260 Ω"))).toContain("loop/electrode-unstable");
    const onWay = text("").replace("place marina", "place marina\n      earthing TT\n      electrode rod 1700 Ω");
    expect(loops(onWay)).toContain("loop/electrode-over-limit");
  });

  it("changes nothing at the origin, whichever board is written first", () => {
    const lone = `wayfile 1
installation "Site" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-C-S
    Ze 0.20 Ω
    Ipf 5.8 kA
  }
  board S "Site board" {
    fed-from supply
    earthing TT
  }
}`;
    const told = (sample: string) => foundBy("fault/disagrees-with-loop", sample).map(({ message }) => message);
    expect(told(lone)).toEqual(told(lone.replace("    earthing TT\n", "")));
    expect(told(lone)).toHaveLength(1);
  });

  it("still has a limit", () => {
    expect(loops(text("earthing TT").replace("52.3 Ω", "1800 Ω"))).toContain("loop/zs-over-rcd-limit");
  });
});

describe("the zones of a bathroom or pool", () => {
  const bath = (place: string, uses = "sockets", more: readonly string[] = [], standard = "BS 7671:2018+A2:2022") =>
    of([rcbo("B16"), `serves ${uses}`, `place ${place}`, ...more], { standard });

  it.each([
    ["bathroom zone outside distance 2.6 m", "BS 7671:2018+A2:2022", []],
    ["bathroom zone outside distance 2.6 m", "BS 7671:2018", ["place/sockets-near-bath error"]],
    ["bathroom zone outside distance 2.4 m", "BS 7671:2018+A2:2022", ["place/sockets-near-bath warning"]],
    ["bathroom distance 3 m", "BS 7671:2008", []],
    ["bathroom", "BS 7671:2018+A2:2022", ["place/distance-not-stated information"]],
    ["bathroom zone outside distance 2.4 m", "BS 7671:2001", []],
  ])("sockets: %s to %s", (place, standard, expected) => {
    expect(bath(place, "sockets", [], standard)).toEqual(expected);
  });

  it("sockets may not stand in one, a shaver supply may", () => {
    expect(bath("bathroom zone 2", "sockets", ["ingress IP44"])).toEqual(["place/sockets-near-bath error"]);
    expect(bath("bathroom zone 2", "shaver")).toEqual([]);
  });

  it("a circuit that serves lights in a zone may have its sockets elsewhere", () => {
    const lines = ["ingress IP44"];
    expect(bath("bathroom zone 1 outside distance 3.5 m", "sockets lighting", lines)).toEqual([]);
    expect(bath("bathroom zone 1 outside", "sockets lighting", lines)).toEqual([
      "place/distance-not-stated information",
    ]);
  });

  it.each([
    ["bathroom zone 1 2 outside", "IP20", ["place/ip-code-too-low error"]],
    ["bathroom zone 2", "IP23", ["place/ip-code-too-low error"]],
    ["bathroom zone 1", "IPX4", []],
    ["bathroom zone outside", "IP20", []],
    ["pool zone 2", "IPX2", []],
    ["pool zone 2", "IPX1", ["place/ip-code-too-low error"]],
    ["agricultural", "IP23", ["place/ip-code-too-low error"]],
  ])("equipment: %s with %s", (place, code, expected) => {
    expect(bath(place, "lighting", [`ingress ${code}`, joined])).toEqual(expected);
  });

  it.each([
    ["pool zone 0", "lighting", "IPX8", ["place/zone-not-selv error"]],
    ["pool zone 1", "heating", "IPX4", ["place/zone-not-selv error"]],
    ["pool zone 2", "heating", "IPX4", []],
    ["pool zone 0 1", "selv", "IPX8", []],
    ["bathroom zone 0", "lighting", "IPX7", ["place/zone-not-selv error"]],
    ["bathroom zone 1", "shower", "IPX5", []],
  ])("mains: %s for %s", (place, use, code, expected) => {
    expect(bath(place, use, [`ingress ${code}`, joined])).toEqual(expected);
  });

  it("nothing is said of a zone that is not one, or is still to come", () => {
    expect(bath("bathroom zone 3", "lighting")).toEqual([]);
    expect(bath("bathroom zone", "lighting")).toEqual([]);
  });
});

describe("supplementary bonding", () => {
  const left = (place: string, device: string, more: readonly string[] = [], why = "") =>
    of([device, "serves heating", `place ${place}`, `supplementary-bonding not-fitted${why}`, ...more]);

  it("may be left out in a bathroom whose circuits disconnect in time behind an RCD", () => {
    expect(left("bathroom", rcbo("B16"))).toEqual([]);
    expect(left("bathroom", rcbo("B16"), ["live 2026-03-05 { Zs 1.2 Ω }"])).toEqual([]);
    expect(left("bathroom", rcbo("B16"), ["live 2026-03-05 { Zs 4.2 Ω }"])).toEqual([]);
    expect(left("bathroom", rcbo("B16"), ["live 2026-03-05 { Zs 1800 Ω }"])).toEqual(["place/bonding-omitted error"]);
    expect(left("bathroom", rcbo("B16", "100 mA"))).toEqual([
      "rcd/sensitivity-too-high error",
      "place/bonding-omitted error",
    ]);
  });

  it("may not at a pool or on a farm, whatever the reason", () => {
    expect(left("pool", rcbo("B16"))).toEqual(["place/bonding-omitted error"]);
    expect(left("agricultural", rcbo("B16"))).toEqual(["place/bonding-omitted error"]);
    expect(left("agricultural", rcbo("B16"), [], ' "Timber and plastic throughout"')).toEqual([
      "place/bonding-omitted error",
    ]);
  });

  it("is asked after once on a board", () => {
    const farm = (more: string) =>
      said(
        inSetting(
          ["1", "2", "3"]
            .map((id) => way([rcbo("B16"), "serves heating", ...(id === "2" ? [more] : [])], "radial", id))
            .join("\n"),
          { board: "fed-from supply\nplace agricultural" },
        ).text,
      );
    expect(farm("Ib 8 A")).toEqual(["place/bonding-not-stated warning"]);
    expect(farm(joined)).toEqual([]);
    expect(farm("supplementary-bonding")).toEqual([]);
  });

  it("is stated by the conductor written on the board", () => {
    const board = "place agricultural\nsupplementary-bonding agricultural 4 mm²";
    expect(onBoard(board, [rcbo("B16"), "serves heating"])).toEqual([]);
  });
});
