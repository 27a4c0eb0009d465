/** Addresses: printed and parsed without loss, one for each thing a schedule holds, and none that depends on order or layout. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { WordRow } from "../../grammar/params.ts";
import { type BlockKind, vocabulary } from "../../grammar/vocabulary.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { type Address, type AddressStep, parseAddress, printAddress } from "../../server/readings/address.ts";
import { type Entry, entriesOfFile, entriesOfInstallation } from "../../server/readings/entries.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const entriesIn = (text: string): readonly Entry[] => entriesOfFile(fileOfText("a.ways", text).model);
const examples = readdirSync("examples", { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".ways"))
  .map((path) => [path, readFileSync(`examples/${path}`, "utf8")] as const);

const asTable = (entries: readonly Entry[]) => entries.map(({ at, shown }) => `${at} = ${shown}`);

describe("the address of", () => {
  const text = `wayfile 1
instrument M1 "Multifunction tester" { due 2027-01-01 }
installation "Gull Slip" {
  stage tested
  supply {
    Ze 0.18 Ω declared
    bonding water 10 mm² continuity 0.03 Ω
    live 2026-03-05 with M1 { Ipf 1.38 kA }
  }
  board A "Main" {
    live 2026-03-05 with M1 { rcd east 30 mA 1x 24 ms }
    way 3 ring "Sockets" {
      device BS EN 60898 B32 6 kA
      run A 7 m S1 6 m S2 9 m A
      departure 411.3.3 "Agreed"
      query "Why C?"
      answer "Inrush"
      dead 2026-03-04 with M1 {
        ends r1 0.31 Ω rn 310 mΩ
        insulation 500 V L-N >999 MΩ L-E LIM "Neon in circuit"
        R1+R2 0.41 Ω was 0.14 Ω "Figures turned round" polarity ok
      }
      dead 2021-03-04 {
        struck-out by "R.M." "Read on way 6"
        R1+R2 2 Ω
      }
    }
  }
}
`;

  it("everything in a schedule", () => {
    expect(asTable(entriesIn(text))).toMatchInlineSnapshot(`
      [
        "file · wayfile = 1",
        "file · instrument M1 = ",
        "file · instrument M1 · title = "Multifunction tester"",
        "file · instrument M1 · due = 2027-01-01",
        "installation = ",
        "installation · stage = tested",
        "supply = ",
        "supply · Ze = 0.18 Ω declared",
        "supply · bonding water = 10 mm²",
        "supply · bonding water · continuity = 0.03 Ω",
        "supply · live 2026-03-05 = ",
        "supply · live 2026-03-05 · with = M1",
        "supply · live 2026-03-05 · Ipf = 1.38 kA",
        "A = ",
        "A · title = "Main"",
        "A · live 2026-03-05 = ",
        "A · live 2026-03-05 · with = M1",
        "A · live 2026-03-05 · rcd east 30 mA 1x = 24 ms",
        "A/3 = ",
        "A/3 · kind = ring",
        "A/3 · title = "Sockets"",
        "A/3 · device = BS EN 60898 B32 6 kA",
        "A/3 · run "A S1 S2 A" = A 7 m S1 6 m S2 9 m A",
        "A/3 · departure 411.3.3 = "Agreed"",
        "A/3 · query "Why C?" = ",
        "A/3 · answer "Why C?" = "Inrush"",
        "A/3 · dead 2026-03-04 = ",
        "A/3 · dead 2026-03-04 · with = M1",
        "A/3 · dead 2026-03-04 · ends · r1 = 0.31 Ω",
        "A/3 · dead 2026-03-04 · ends · rn = 310 mΩ",
        "A/3 · dead 2026-03-04 · insulation 500 V · L-N = >999 MΩ",
        "A/3 · dead 2026-03-04 · insulation 500 V · L-E = LIM "Neon in circuit"",
        "A/3 · dead 2026-03-04 · R1+R2 = 0.41 Ω was 0.14 Ω "Figures turned round"",
        "A/3 · dead 2026-03-04 · polarity = ok",
        "A/3 · dead 2021-03-04 struck-out = ",
        "A/3 · dead 2021-03-04 struck-out · struck-out = by "R.M." "Read on way 6"",
        "A/3 · dead 2021-03-04 struck-out · R1+R2 = 2 Ω",
      ]
    `);
  });

  it("a way of one of several installations has its title before it", () => {
    const two = `installation "One" {\n board A {\n way 1 spare\n }\n}\ninstallation "Two" {\n stage design\n board A {\n way 1 spare\n }\n}\n`;
    expect(entriesIn(two).map(({ at }) => at)).toEqual([
      'installation "One"',
      'installation "One" · A',
      'installation "One" · A/1',
      'installation "One" · A/1 · kind',
      'installation "Two"',
      'installation "Two" · stage',
      'installation "Two" · A',
      'installation "Two" · A/1',
      'installation "Two" · A/1 · kind',
    ]);
  });
});

describe("meanings", () => {
  const meaningsOf = (line: string) =>
    entriesIn(`board A {\n way 1 {\n live 2026-03-05 {\n ${line}\n }\n }\n}\n`)
      .filter(({ reading }) => reading)
      .map(({ meaning }) => meaning);
  const same = (a: string, b: string) => expect(meaningsOf(a)).toEqual(meaningsOf(b));
  const differ = (a: string, b: string) => expect(meaningsOf(a)).not.toEqual(meaningsOf(b));

  it("are of quantities, not of letters", () => {
    same("Zs 0.62 Ω", "Zs   620 mohm");
    same("Zs 0.40 Ω", "Zs 0.4 Ω");
    differ("Zs 0.62 Ω", "Zs 0.63 Ω");
  });

  it("tell a bound, a limitation and where a figure came from", () => {
    differ("Zs 0.62 Ω", "Zs <0.62 Ω");
    differ("Zs 0.62 Ω", "Zs 0.62 Ω calculated");
    differ('Zs LIM "no access"', 'Zs LIM "no key"');
    differ('Zs LIM "no access"', "Zs N/A");
    differ("Zs 0.62 Ω", 'Zs 0.62 Ω was 0.26 Ω "Turned round"');
  });

  it("are the same for a result beside another and on a line of its own", () => {
    same("rcd 30 mA 1x 24 ms test-button ok", "rcd 30 mA 1x 24 ms\n test-button ok");
  });
});

describe("in every example", () => {
  it.each(examples)("%s: each address once, and each is read back", (_, text) => {
    const entries = entriesIn(text);
    expect(new Set(entries.map(({ at }) => at)).size).toBe(entries.length);
    for (const { at, address } of entries) expect(parseAddress(at), at).toEqual(address);
  });

  const alone = examples.flatMap(([name, text]) => {
    const file = fileOfText("a.ways", text);
    const [installation, ...others] = installationsOf([file]);
    return installation && others.length === 0 ? [[name, file, installation] as const] : [];
  });
  it.each(alone)(
    "%s: an installation holds what its file holds, but for what is written in short",
    (_, file, installation) => {
      const short = ({ part }: Address) => part === "each";
      const held = new Set(entriesOfInstallation(installation).map(({ at }) => at));
      const missing = entriesOfFile(file.model).filter(({ at, address }) => !held.has(at) && !short(address));
      expect(missing.map(({ at }) => at)).toEqual([]);
    },
  );

  it.each(examples)("%s: neither the order of lines nor blanks nor comments move an address", (_, text) => {
    const wanted = asTable(entriesIn(text)).sort();
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat({ max: 1000 })), (dice) => {
        const next = () => dice.next().value as number;
        const shuffled = shuffle(text, next);
        expect(asTable(entriesIn(shuffled)).sort()).toEqual(wanted);
      }),
      { numRuns: 3 },
    );
  });
});

/** Lines of readings change places inside their blocks, blanks are stretched and remarks are put between. */
function shuffle(text: string, next: () => number): string {
  const reads =
    /^\s+(?:Zs|R1\+R2|R2|polarity|insulation|at|ends|rcd|test-button|Ipf|Zdb|due|serial|device|cable|length|Ib|serves)\b[^{}]*$/;
  const out: string[] = [];
  let run: string[] = [];
  const flush = () => {
    for (const line of run.toSorted(() => (next() % 2 === 0 ? 1 : -1))) out.push(stretched(line, next));
    run = [];
  };
  for (const line of text.split("\n")) {
    if (reads.test(line)) run.push(line);
    else {
      flush();
      if (/^\s+\}$/.test(line)) out.push("# a remark");
      out.push(line);
    }
  }
  flush();
  return out.join("\n");
}

const stretched = (line: string, next: () => number): string =>
  line.includes('"') ? line : line.replace(/ {2,}/g, () => " ".repeat(2 + (next() % 5)));

const anyText = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 12 }).filter((text) => !/[\r\n]/.test(text)),
  fc.constantFrom(
    "supply",
    "file",
    "installation",
    "stage",
    "struck-out",
    "500 V",
    "5",
    "A",
    "a · b",
    'q"\\',
    "#2",
    "A/3",
    "",
  ),
);
const rows = Object.entries(vocabulary) as unknown as [BlockKind, Record<string, WordRow>][];
const stepAmong = (kind: BlockKind, opens: boolean): fc.Arbitrary<AddressStep> => {
  const words = Object.entries(rows.find(([name]) => name === kind)?.[1] ?? {}).flatMap(([word, row]) =>
    (row.opens !== undefined) === opens ? [word] : [],
  );
  const key = fc.array(anyText, { maxLength: 3 });
  const word = fc.constantFrom(...words);
  return fc.oneof(fc.record({ word, key }), fc.record({ word, key, struckOut: fc.constant(true as const) }));
};
const place = fc.oneof(
  fc.record({ of: fc.constant("file" as const) }),
  fc.record({ of: fc.constant("installation" as const) }),
  fc.record({ of: fc.constant("board" as const), board: anyText }),
  fc.record({ of: fc.constant("way" as const), board: anyText, way: anyText }),
);
const testBlock = { way: "dead", board: "live", installation: "supply", file: "instrument" } as const;
const address: fc.Arbitrary<Address> = place.chain((where) => {
  const inside = testBlock[where.of];
  const kind = where.of === "board" ? "boardLive" : where.of === "way" ? "dead" : inside;
  const open = fc.array(anyText, { maxLength: 2 }).map((key): AddressStep[] => [{ word: inside, key }]);
  const line = (block: BlockKind) => stepAmong(block, false);
  const rest = fc.oneof(
    fc.record({ blocks: fc.constant([]), line: line(where.of) }),
    fc.record({ blocks: open, line: line(kind as BlockKind), part: anyText }),
    fc.record({ blocks: open, line: line(kind as BlockKind), nth: fc.integer({ min: 2, max: 9 }) }),
    fc.record({ blocks: open }),
    fc.record({ blocks: fc.constant([]) }),
  );
  const named = where.of === "file" ? fc.constant({}) : fc.oneof(fc.constant({}), fc.record({ installation: anyText }));
  return fc.tuple(named, rest).map(([title, more]) => ({ ...title, place: where, ...more }));
});

describe("any address", () => {
  it("is read back as it was printed", () => {
    fc.assert(
      fc.property(address, (one) => {
        expect(parseAddress(printAddress(one)), printAddress(one)).toEqual(one);
      }),
      { numRuns: 1000 },
    );
  });

  it("is printed back as it was read, and rubbish is none", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        const read = parseAddress(text);
        if (read) expect(parseAddress(printAddress(read))).toEqual(read);
      }),
    );
    for (const text of ["", " · ", "A ·", "A/3 · x · y · z", '"A', "A/3/4"])
      expect(parseAddress(text), text).toBeUndefined();
  });
});

describe("the vocabulary", () => {
  it.each(
    rows
      .flatMap(([block, words]) => Object.entries(words).map(([word, row]) => [`${word} in ${block}`, row] as const))
      .filter(([, { times, key }]) => times === "often" || key !== undefined),
  )("%s: two of it are told apart", (_, row) => {
    const defines = Object.values(row.params).some(({ accepts }) => accepts.kind === "define");
    if (row.times === "often") expect(Boolean(row.reads ?? row.key ?? row.follows ?? defines)).toBe(true);
    for (const name of row.key ?? []) expect(Object.keys(row.params)).toContain(name);
  });
});
