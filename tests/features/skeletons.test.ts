/** What completion lays out is read without a fault once its stops are filled, and knows its place. */
import { describe, expect, it } from "vitest";
import { complete } from "../../server/features/completion.ts";
import { atCursor, loft, openSample } from "../helpers/cursor.ts";

/** The snippet that is offered by a label, as it is inserted. */
async function skeleton(sample: string, label: string): Promise<string> {
  const { snapshot, cursor } = await atCursor(sample);
  const offer = complete(snapshot, cursor).find((one) => one.label === label);
  if (!offer) throw new Error(`${label} is not offered.`);
  return offer.snippet ?? offer.text;
}

const design = loft
  .replace("stage     tested", "stage     design")
  .replace(/ {6}dead [\s\S]*?\n {6}}\n {6}live [\s\S]*?\n {6}}\n/, "");
const dwelling = `wayfile 1
installation "Alder House" {
  standard  BS 7671:2018+A2:2022
  stage     design
  work      new
  premises  dwelling
  supply {
    earthing  TN-C-S
    Ze        0.3 Ω declared
    Ipf       1.1 kA
    cutout    BS 88-3 100 A
  }
  board A "Consumer unit" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    ┆
  }
}
`;

/** The snippet with each choice taken as it stands first, and blanks filled as somebody would. */
const filled = (snippet: string, blanks: readonly string[]): string => {
  const left = [...blanks];
  return snippet
    .replace(/\$\{\d+\|((?:[^|\\]|\\.)*)\|\}/g, (_, choices: string) => choices.split(",")[0] ?? "")
    .replace(/\$\{\d+:\$CURRENT_YEAR-\$CURRENT_MONTH-\$CURRENT_DATE\}/g, "2026-03-04")
    .replace(/\$\{\d+:([^}]*)\}/g, "$1")
    .replace(/\$\{\d+\}/g, () => left.shift() ?? "")
    .replace("$0", "");
};

const faultsOf = async (text: string): Promise<string[]> =>
  (await openSample(text)).snapshot.findings
    .filter(({ check }) => check.startsWith("language/"))
    .map(({ message }) => message);

describe("skeletons", () => {
  it("a way has the next free number and what most ways of the board have", async () => {
    const board = design.replace("way 9 spare", "way 9 spare\n    ┆");
    expect(await skeleton(board, "way")).toMatchInlineSnapshot(`
      "way 10 \${1|radial,ring|} "\${2}" {
      	device       BS EN 60898 \${3|B20,B32,B16,B6,B40,B10,B25,B50,B63|} 6 kA
      	behind       \${4:east}
      	cable        flat-twin  line \${5|2.5 mm²  cpc 1.5,4 mm²  cpc 1.5,1 mm²  cpc 1,1.5 mm²  cpc 1,6 mm²  cpc 2.5,10 mm²  cpc 4,16 mm²  cpc 6|} mm²
      	route        \${6|clipped  method C,ceiling  method 100,wall  method 102,floor  method C|}
      	length       \${7} m
      	serves       \${8|sockets,lighting,cooker,shower,water-heater,heating,alarms,appliance,outdoor-sockets,laundry,ev-charger|}
      }$0"
    `);
    expect(await skeleton(dwelling, "way")).toMatchInlineSnapshot(`
      "way 1 \${1|radial,ring|} "\${2}" {
      	device       BS EN 61009 \${3|B20,B32,B16,B6,B40,B10,B25,B50,B63|} 6 kA 30 mA type A
      	cable        flat-twin  line \${4|2.5 mm²  cpc 1.5,4 mm²  cpc 1.5,1 mm²  cpc 1,1.5 mm²  cpc 1,6 mm²  cpc 2.5,10 mm²  cpc 4,16 mm²  cpc 6|} mm²
      	route        \${5|clipped  method C,ceiling  method 100,wall  method 102,floor  method C|}
      	length       \${6} m
      	serves       \${7|sockets,lighting,cooker,shower,water-heater,heating,alarms,appliance,outdoor-sockets,laundry,ev-charger|}
      }$0"
    `);
  });

  it("a way is found by its kind and by what it is for", async () => {
    expect(await skeleton(dwelling, "lighting")).toMatchInlineSnapshot(`
      "way 1 radial "\${1:Lighting}" {
      	device       BS EN 61009 \${2|B6,B10,B32,B16,B20,B40,B25,B50,B63|} 6 kA 30 mA type A
      	cable        flat-twin  line \${3|1.5 mm²  cpc 1,1 mm²  cpc 1,2.5 mm²  cpc 1.5,4 mm²  cpc 1.5,6 mm²  cpc 2.5,10 mm²  cpc 4,16 mm²  cpc 6|} mm²
      	route        \${4|clipped  method C,ceiling  method 100,wall  method 102,floor  method C|}
      	length       \${5} m
      	serves       lighting
      }$0"
    `);
    expect(await skeleton(dwelling, "sockets-ring")).toMatchInlineSnapshot(`
      "way 1 ring "\${1:Sockets}" {
      	device       BS EN 61009 \${2:B32} 6 kA 30 mA type A
      	cable        flat-twin  line \${3|2.5 mm²  cpc 1.5,4 mm²  cpc 1.5,1 mm²  cpc 1,1.5 mm²  cpc 1,6 mm²  cpc 2.5,10 mm²  cpc 4,16 mm²  cpc 6|} mm²
      	route        \${4|clipped  method C,ceiling  method 100,wall  method 102,floor  method C|}
      	length       \${5} m
      	serves       sockets
      }$0"
    `);
    expect(await skeleton(dwelling, "spare")).toBe("way 1 spare");
    expect(await skeleton(dwelling.replace("┆", "way 4 ┆"), "ring")).toMatchInlineSnapshot(`
      "ring "\${1}" {
      	device       BS EN 61009 \${2:B32} 6 kA 30 mA type A
      	cable        flat-twin  line \${3|2.5 mm²  cpc 1.5,4 mm²  cpc 1.5,1 mm²  cpc 1,1.5 mm²  cpc 1,6 mm²  cpc 2.5,10 mm²  cpc 4,16 mm²  cpc 6|} mm²
      	route        \${4|clipped  method C,ceiling  method 100,wall  method 102,floor  method C|}
      	length       \${5} m
      	serves       \${6|sockets,lighting,cooker,shower,water-heater,heating,alarms,appliance,outdoor-sockets,laundry,ev-charger|}
      }$0"
    `);
  });

  it("behind its number a way is found by what it is for as well, until it has a title", async () => {
    const whole = await skeleton(dwelling, "lighting");
    expect(await skeleton(dwelling.replace("┆", "way 1 ┆"), "lighting")).toBe(whole?.replace("way 1 ", ""));
    expect(await skeleton(dwelling.replace("┆", "way 4 coo┆"), "cooker")).toMatch(/^radial "\$\{1:Cooker\}" \{\n/);
    const { snapshot, cursor } = await atCursor(dwelling.replace("┆", 'way 4 "Yard" ┆'));
    expect(complete(snapshot, cursor).map(({ label }) => label)).not.toContain("lighting");
  });

  it("a record of what is there has no device and no cable that nobody saw", async () => {
    const there = loft.replace("way 9 spare", "way 9 spare\n    ┆");
    expect(await skeleton(there, "way")).toBe(`way 10 $\{1|radial,ring|} "$\{2}" {\n\t$0\n}`);
  });

  it("a way that is laid out is in order as it stands, whatever it is for", async () => {
    const { snapshot, cursor } = await atCursor(dwelling);
    const ways = complete(snapshot, cursor).filter(
      ({ snippet }) => snippet?.startsWith("way ") && !snippet.includes("feeds"),
    );
    expect(ways.length).toBeGreaterThan(8);
    for (const { snippet, label } of ways) {
      const text = dwelling.replace("┆", filled(snippet ?? "", label === "way" ? ["Yard", "12"] : ["12"]));
      const found = (await openSample(text)).snapshot.findings.filter(({ severity }) => severity === "error");
      expect(
        found.map(({ message }) => message),
        label,
      ).toEqual([]);
    }
  });

  it("what is begun behind a closing brace gets a line of its own", async () => {
    const board = dwelling.replace("┆", 'way 1 radial "Yard" {\n    }li┆');
    expect(await skeleton(board, "lighting")).toMatch(/^\nway 2 radial "/);
    expect(await skeleton(board, "spare")).toBe("\nway 2 spare");
    expect(await skeleton(dwelling, "lighting")).toMatch(/^way 1 radial "/);
  });

  it("holds no words about itself, and no reading", async () => {
    for (const sample of [dwelling, "┆", design.replace("    way 9 spare", "    ┆")]) {
      const { snapshot, cursor } = await atCursor(sample);
      const snippets = complete(snapshot, cursor).flatMap(({ snippet }) => snippet ?? []);
      expect(snippets).not.toHaveLength(0);
      for (const snippet of snippets) {
        expect(snippet).not.toMatch(/\$\{\d+:[a-z]+ [a-z]+/);
        expect(snippet).not.toMatch(/(?:Ze|Zs|Ipf|R1\+R2) +\d/);
      }
    }
  });

  it.each([
    ["way", ["Hall", "12"]],
    ["lighting", ["12"]],
    ["sockets-ring", ["60"]],
    ["cooker", ["12"]],
    ["shower", ["12"]],
    ["motor", ["12"]],
    ["feeder", ["To the annexe", "12", "A"]],
    ["spare", []],
  ])("%s is read without a fault once it is filled", async (label, blanks) => {
    const text = filled(await skeleton(dwelling, label), blanks);
    expect(await faultsOf(dwelling.replace("┆", text))).toEqual([]);
  });

  it("a whole schedule is read without a fault once it is filled", async () => {
    const text = filled(await skeleton("┆", "wayfile"), ["Alder House", "0.3", "1.1", "Consumer unit"]);
    expect(await faultsOf(text)).toEqual([]);
  });

  it("the next board has the next letter, and a board to feed it", async () => {
    const sample = design.replace(/\n}\n$/, "\n  ┆\n}\n");
    expect(await skeleton(sample, "board")).toMatchInlineSnapshot(`
      "board \${1:B} "\${2}" {
      	fed-from     \${3|A,supply|}
      	main-switch  BS EN 60947-3 \${4|100,80,63,125|} A

      	$0
      }"
    `);
  });
});
