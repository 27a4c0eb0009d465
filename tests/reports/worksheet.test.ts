/** Worksheets as they are printed: a person reads these snapshots, so a change in them is read as well. */
import { describe, expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import type { Report } from "../../server/reports/setting/document.ts";
import { reportHtml } from "../../server/reports/setting/html.ts";
import { reportMarkdown } from "../../server/reports/setting/markdown.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { worksheetOf } from "../../server/reports/worksheet/scope.ts";
import { worksheet } from "../../server/reports/worksheet/worksheet.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { Folder } from "../cli/run.ts";

const weir = `wayfile 1
installation "Weir House pump room" {
  standard  BS 7671:2018+A2:2022
  stage     installed
  work      new
  premises  commercial
  supply {
    earthing            TN-S
    Ze                  0.31 Ω
    earthing-conductor  16 mm²
    bonding             water 10 mm² length 14 m
  }
  board P "Pump board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    Zdb          0.33 Ω
    rcd north    BS EN 61008 63 A 30 mA type A

    way 1 ring "Workshop sockets" {
      device  BS EN 60898 B32 6 kA
      behind  north
      cable   flat-twin line 2.5 mm² cpc 1.5 mm²
      run     P 6 m S1 5 m S2 7 m S3 8 m P
      run     S2 3 m S4
      serves  sockets
      dead 2026-02-11 {
        ends  r1 0.20 Ω rn 0.20 Ω r2 0.32 Ω
        at S1 L-N 0.10 Ω L-E 0.13 Ω polarity ok
      }
    }

    way 2 radial "Float alarm" {
      device  BS EN 61009 B6 6 kA 30 mA type A
      cable   flat-twin line 1.5 mm² cpc 1.0 mm²
      length  19 m
      serves  alarms
      dead 2026-02-11 {
        R1+R2       0.58 Ω
        insulation  500 V L-E >999 MΩ joined "Alarm unplugged"
        polarity    ok
      }
      live 2026-02-12 {
        Zs  LIM "Panel locked by the client"
      }
    }
    way 3 spare
  }
}
`;

function sheet(text: string, named?: string, again = false): Report {
  const found = worksheetOf(installationsOf([fileOfText("weir.ways", text)]), named, again);
  if ("failure" in found) throw new Error(found.failure);
  return found.report;
}

const titles = (report: Report): string[] => report.sections.map(({ title }) => title);
const everything = (report: Report): string =>
  [reportText(report), reportMarkdown(report), reportHtml(report)].join("\n");

describe("a worksheet", () => {
  it("of a ring shows what was read and leaves room for the rest", () => {
    expect(reportText(sheet(weir, "P/1"))).toMatchSnapshot();
  });

  it("of a board expects of its insulation what its circuits read in parallel, once each was read", () => {
    const circuit = (number: number, insulation: string) =>
      `way ${number} radial "Pump" {\ndead 2026-02-11 {\n${insulation}\n}\n}`;
    const board = (...read: readonly string[]) =>
      `wayfile 1\ninstallation "Works" {\nstandard BS 7671:2018+A2:2022\nstage installed\nsupply {\nearthing TN-S\n}\nboard P "Board" {\nfed-from supply\n${read.map((one, at) => circuit(at + 1, one)).join("\n")}\nway 9 spare\n}\n}`;
    const row = (text: string) =>
      /L and N together to E, the whole board.*/.exec(reportMarkdown(sheet(text, "P")))?.[0];
    const one = (value: string) => `insulation 500 V L-E ${value} joined`;
    // 1 / (1/60 + 1/30) = 20
    expect(row(board(one("60 MΩ"), one("30 MΩ")))).toContain("20 MΩ");
    expect(row(board(one(">100 MΩ"), one("25 MΩ")))).toContain("at least 20 MΩ");
    expect(row(board(one("60 MΩ"), 'insulation 500 V L-E LIM "Locked"'))).not.toMatch(/60|20 MΩ/);
  });

  it("of a radial in Markdown", () => {
    expect(reportMarkdown(sheet(weir, "P/2"))).toMatchSnapshot();
  });

  it("has a line for each point of a radial that is drawn, the highest marked, and Zs at the farthest alone", () => {
    const drawn = weir
      .replace("length  19 m", "run     P 9 m A1 6 m A2\n      run     A1 12 m A3")
      .replace("R1+R2       0.58 Ω", "at A1 L-E 0.28 Ω");
    const lines = reportText(sheet(drawn.replace('Zs  LIM "Panel locked by the client"', "polarity ok"), "P/2")).split(
      "\n",
    );
    const named = lines.flatMap((line) => /^(R1\+R2|Zs)[^:]*? {2}/.exec(line)?.[0].trim() ?? []);
    expect(named).toEqual([
      "R1+R2 at A1",
      "R1+R2 at A2",
      "R1+R2 at A3, the highest",
      "R1+R2, the highest of them",
      "Zs, the far point A3",
    ]);
    expect(lines.find((line) => line.startsWith("R1+R2 at A1"))).toMatch(/0\.27 Ω.*0\.28 Ω/);
    expect(lines.find((line) => line.startsWith("Zs, the far point A3"))).toMatch(/0\.96 Ω/);
  });

  it("asks for no more points once the circuit's own figure is written", () => {
    const drawn = weir.replace("length  19 m", "run     P 9 m A1 6 m A2");
    const text = reportText(sheet(drawn, "P/2"));
    expect(text).toContain("R1+R2");
    expect(text).not.toMatch(/ at A1| at A2/);
  });

  it("of lighting speaks of the way down to the switch", () => {
    const lamps = weir.replace("length  19 m", "run     P 9 m L1 6 m L2").replace("serves  alarms", "serves  lighting");
    expect(reportText(sheet(lamps, "P/2")).replace(/\s+/g, " ")).toContain(
      "2 × 12.1 mΩ = 24.2 mΩ for each metre down to the switch",
    );
    expect(reportText(sheet(weir, "P/2"))).not.toContain("switches. Behind");
  });

  it("keeps the order of the trade, dead before live", () => {
    const parts = titles(sheet(weir, "P/1")).slice(1);
    expect(parts.map((title) => title.replace(/^.*\((dead|live)\)$/, "$1"))).toEqual(
      [...parts.map((title) => (title.endsWith("(dead)") ? "dead" : "live"))].sort(),
    );
    expect(parts[0]).toBe("Ring: the ends (dead)");
  });

  it("says to prove dead before the first dead test and who may work live before the first live one", () => {
    const text = reportText(sheet(weir, "P/2")).replace(/\s+/g, " ");
    expect(text.indexOf("Prove dead")).toBeLessThan(text.indexOf("Test Should read"));
    expect(text.indexOf("only by those competent")).toBeGreaterThan(text.indexOf("Polarity"));
    expect(text).toContain("disconnect the alarm heads");
  });

  it("of all circuits goes dead first, then energises once, then goes live", () => {
    const order = titles(sheet(weir));
    const energised = order.indexOf("Energise");
    expect(order.filter((title) => title === "Energise")).toHaveLength(1);
    const places = [
      "Origin",
      "Board P: Pump board",
      "Way P/1: Workshop sockets, ring · B32 BS EN 60898",
      "Way P/2: Float alarm, radial · B6 BS EN 61009",
    ];
    const half = (phase: string) => [
      `How each way is tested ${phase}`,
      ...places.map((place) => `${place} · ${phase}`),
    ];
    expect(order).toEqual([...half("dead"), "Energise", ...half("live")]);
    expect(energised).toBe(5);
  });

  it("of all circuits states once how a test is made, and at a way only what is to be minded there", () => {
    const text = reportMarkdown(sheet(weir));
    expect(text.match(/before the test voltage goes on/g)).toHaveLength(1);
    expect(text.match(/disconnect the alarm heads/g)).toHaveLength(1);
    expect(text.match(/Prove dead with/g)).toHaveLength(2);
    expect(text.match(/live work from here/g)).toHaveLength(2);
    expect(text).toMatch(/Insulation L-N/);
  });

  it("for a re-test has a blank for every reading, and what was read last time beside it", () => {
    expect(reportText(sheet(weir, "P/2", true))).toMatch(/R1\+R2.*0\.58 Ω +_{8} Ω/);
    expect(reportText(sheet(weir, "P/2"))).not.toMatch(/Last time/);
  });

  it("tests an RCD of the board at the board, and an RCBO at its way", () => {
    expect(reportText(sheet(weir, "P/1"))).not.toContain("30 mA type A BS EN 61008");
    expect(reportMarkdown(sheet(weir, "P"))).toContain("north: 30 mA type A BS EN 61008 at 1 × IΔn");
    expect(reportText(sheet(weir, "P/2"))).toContain("30 mA type A BS EN 61009 at 1 × IΔn");
  });

  it("asks for the tests of an earlier edition where that is the one named", () => {
    const earlier = reportText(sheet(weir.replace("+A2:2022", ""), "P/2"));
    expect(earlier).toContain("at ½ × IΔn");
    expect(earlier).toContain("at 5 × IΔn");
  });

  it("counts the blanks that are left", () => {
    const one = sheet(weir, "P/2");
    const filled = sheet(
      weir.replace("live 2026-02-12 {", "live 2026-02-12 {\n rcd 30 mA 1x 24 ms\n test-button ok\n function ok"),
      "P/2",
    );
    expect(one.lead).toContain("3 still to be read.");
    expect(filled.lead).toContain("Nothing is left to read.");
  });

  it("shows the reason of a limitation in the place of the reading", () => {
    expect(reportMarkdown(sheet(weir, "P/2"))).toContain("LIM: Panel locked by the client");
  });

  it("tells what is left to a limit, and by how much one is passed", () => {
    const margin = (Zs: string) =>
      reportText(sheet(weir.replace('Zs  LIM "Panel locked by the client"', `Zs  ${Zs}`), "P/2")).replace(/\s+/g, " ");
    expect(margin("0.91 Ω")).toMatch(/0\.91 Ω, \d+ % left/);
    expect(margin("9.10 Ω")).toMatch(/9\.10 Ω, \d+ % over/);
    expect(margin(">20 Ω")).toMatch(/>20 Ω, \d+ % over/);
  });

  it("never prints what is not known as if it were something", () => {
    const bare =
      'wayfile 1\ninstallation "Bare" {\nboard A "x" {\nway 1 ring\nway 2 radial\nway 3 feeder\nway 4\n}\n}\n';
    for (const text of [weir, bare, 'wayfile 1\ninstallation "" {\n}\n']) {
      const set = everything(sheet(text));
      expect(set).toContain("<h1>");
      expect(set).not.toMatch(/undefined|NaN|null|Infinity|\[object/);
    }
  });

  it("is one safe file of HTML for paper and phone", () => {
    const html = reportHtml(sheet(weir.replace("Float alarm", "<img src=x> & <script>alarm</script>"), "P/2"));
    expect(html).toContain("&lt;img src=x&gt; &amp; &lt;script&gt;");
    expect(html).not.toMatch(/<(?:img|script|link)\b|https?:/);
    expect(html).toContain("@media print");
    expect(html).toContain('name="viewport"');
  });

  it("refuses a way that is not there in one sentence", () => {
    expect(() => sheet(weir, "P/9")).toThrow("Board P has no way 9: it has 1, 2 and 3.");
    expect(() => sheet(weir, "Q/1")).toThrow("There is no board “Q”: there is P.");
    expect(() => sheet("wayfile 1\n")).toThrow(/no installation/);
  });
});

describe("wayfile worksheet", () => {
  it("writes the sheet of a way to standard output", async () => {
    const folder = new Folder({ "weir.ways": weir });
    const { code, out, err } = await folder.run("worksheet", "weir.ways", "--way", "P/2", "--format", "markdown");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("# Test worksheet: Weir House pump room, way P/2");
  });

  it("fails in one sentence on a file that is not there, and on a way that is not", async () => {
    const folder = new Folder({ "weir.ways": weir });
    expect(await folder.run("worksheet", "none.ways")).toMatchObject({ code: 2, out: "" });
    expect(await folder.run("worksheet", "weir.ways", "--way", "P/9")).toMatchObject({
      code: 2,
      err: "Board P has no way 9: it has 1, 2 and 3.\n",
    });
  });

  it("of an installation without a name says so", () => {
    expect(sheet(weir.replace("Weir House pump room", "")).title).toBe(
      "Test worksheet: an installation without a name",
    );
  });
});

it("says at polarity what a lampholder needs where a way supplies lights, and nowhere else", () => {
  const words = "in a screw lampholder the line is on the centre contact";
  const sheetOf = (uses: string): string => {
    const [installation] = installationsOf([
      fileOfText(
        "a.ways",
        `wayfile 1\ninstallation "Hut" {\nstandard BS 7671:2018+A2:2022\nstage installed\nboard A "Main" {\nway 1 radial "One" {\nserves ${uses}\n}\n}\n}\n`,
      ),
    ]);
    const sheet = installation && worksheet(installation, {});
    return sheet ? reportText(sheet).replace(/\s+/g, " ") : "";
  };
  expect(["lighting", "sockets", "heating"].filter((use) => sheetOf(use).includes(words))).toEqual(["lighting"]);
});
