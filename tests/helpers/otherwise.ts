/**
 * One schedule written in other ways: its lines and blocks in another order, what holds if nothing is stated stated, the
 * design of each circuit as a circuit type, in other units. Each is written down here by what a person means by it.
 */

/** A line, or a block by the line that opens it. */
type Item = string | Block;

interface Block {
  readonly head: string;
  readonly items: readonly Item[];
}

const isBlock = (item: Item): item is Block => typeof item !== "string";

/** The blocks of a text of one statement a line; nothing where its braces do not match. */
function blocksOf(text: string): Item[] | undefined {
  const open: Item[][] = [[]];
  for (const written of text.split("\n")) {
    const line = written.trim();
    const into = open.at(-1);
    if (!into) return undefined;
    if (line === "}") open.pop();
    else if (!line.startsWith("#") && line.endsWith("{")) {
      const items: Item[] = [];
      into.push({ head: line, items });
      open.push(items);
    } else into.push(line);
  }
  return open.length === 1 ? open[0] : undefined;
}

const textOf = (items: readonly Item[]): string =>
  items.map((item) => (isBlock(item) ? `${item.head}\n${textOf(item.items)}}\n` : `${item}\n`)).join("");

type Change = (items: readonly Item[], head: string) => readonly Item[];

/** What every block holds, the file itself first, innermost blocks before those round them. */
const inEach = (items: readonly Item[], change: Change, head = ""): readonly Item[] =>
  change(
    items.map((item) => (isBlock(item) ? { ...item, items: inEach(item.items, change, item.head) } : item)),
    head,
  );

type Rewriting = (text: string) => string;

const blocks =
  (change: Change): Rewriting =>
  (text) => {
    const items = blocksOf(text);
    return items ? textOf(inEach(items, change)) : text;
  };

const linesOf = (items: readonly Item[]): string[] => items.filter((item): item is string => !isBlock(item));
const innerOf = (items: readonly Item[]): Block[] => items.filter(isBlock);

/** A line that states what holds where it is not stated, in the blocks that lack it. */
const stated = (opening: RegExp, line: string): Rewriting => {
  const [word = ""] = line.split(" ");
  return blocks((items, head) =>
    !opening.test(head) || linesOf(items).some((one) => one.split(/\s/)[0] === word) ? items : [line, ...items],
  );
};

/** An answer stands below its query, and the file's first lines are no statements of a block. */
const backwards: Change = (items, head) => {
  if (head === "") return items;
  const groups: string[][] = [];
  for (const line of linesOf(items)) {
    // Comments and blank lines between the two go with them.
    const asked = groups.findLastIndex(([first]) => !/^\s*(#|$)/.test(first ?? ""));
    if (asked >= 0 && /^answer\b/.test(line)) groups.push([...groups.splice(asked).flat(), line]);
    else groups.push([line]);
  }
  return [...groups.reverse().flat(), ...innerOf(items)];
};

/** Sections of a route as two of half the length. */
const inSections: Change = (items, head) => {
  const routes = linesOf(items).filter((line) => /^route\b/.test(line));
  const [route] = routes;
  const length = linesOf(items).flatMap((line) => /^length\s+([\d.]+) m$/.exec(line)?.[1] ?? []);
  if (!head.startsWith("way ") || !route || routes.length > 1 || length.length !== 1) return items;
  if (/\b(length|in|grouped|legs|bends)\b/.test(route)) return items;
  const half = Number(length[0]) / 2;
  return items.flatMap((item) =>
    item === route ? [`${route} length ${half} m`, `${route} length ${half} m`] : [item],
  );
};

const ofDesign = /^(device|cable|route|serves|afdd|rcd)\b/;

/** The design of each final circuit as a circuit type of its own. */
function asTypes(text: string): string {
  const items = blocksOf(text);
  if (!items) return text;
  const types: Block[] = [];
  const rest = inEach(items, (inside) =>
    inside.map((item) => {
      const [, id, kind, title] = (isBlock(item) && /^way (\S+) (radial|ring) (.*)$/.exec(item.head)) || [];
      if (!isBlock(item) || !id) return item;
      const design = linesOf(item.items).filter((line) => ofDesign.test(line));
      if (design.length === 0) return item;
      const name = `kind-${types.length + 1}`;
      types.push({ head: `circuit-type ${name} ${kind} {`, items: design });
      const own = item.items.filter((line) => isBlock(line) || !design.includes(line));
      return { head: `way ${id} as ${name} ${title}`, items: own };
    }),
  );
  const first = rest.findIndex(isBlock);
  return textOf([...rest.slice(0, first), ...types, ...rest.slice(first)]);
}

/** What all boards of a text have, where the supply alone says so. */
function boardPhases(text: string): string {
  const three = /supply \{[^}]*phases +three/.test(text);
  return /fed-from(?! +supply)/.test(text) ? text : stated(/^board /, `phases ${three ? "three" : "single"}`)(text);
}

const onRoutes = (those: RegExp, unless: RegExp, added: string): Rewriting =>
  blocks((items) =>
    items.map((item) =>
      !isBlock(item) && /^route\b/.test(item) && those.test(item) && !unless.test(item) ? `${item} ${added}` : item,
    ),
  );

const inGround = /\b(buried|duct|method D)\b/;
const figure = (written: string, by: number): string => String(Number((Number(written) * by).toFixed(6)));

const elsewhere = `installation "Elsewhere, apart" {
  standard BS 7671:2018+A2:2022
  stage design
  premises commercial
  supply {
    earthing TN-S
    Ze 0.30 Ω
    Ipf 1.2 kA
  }
}
`;

/** Each leaves every finding as it is. */
export const otherwise: Readonly<Record<string, Rewriting>> = {
  "lines backwards": (text) => (/^\s*(point|run)\b/m.test(text) ? text : blocks(backwards)(text)),
  "blocks backwards": blocks((items) => [...linesOf(items), ...innerOf(items).reverse()]),
  "lines of the supply renamed": (text) => text.replace(/\bL([123])\b/g, (_, line) => `L${(Number(line) % 3) + 1}`),
  "ways renumbered": (text) => text.replace(/\bway (\d+)\b/g, (_, number) => `way ${Number(number) + 40}`),
  "with comments": (text) => text.replaceAll("\n", "\n\n# Seen again\n"),
  "CRLF ends": (text) => text.replaceAll("\n", "\r\n"),
  "tabs before lines": (text) => text.replace(/^ +/gm, "\t"),
  "beside another installation": (text) => (/^installation\b/m.test(text) ? `${text}\n${elsewhere}` : text),
  "with a spare way": blocks((items, head) =>
    head.startsWith("board ") ? [...items, { head: 'way 77 spare "Spare" {', items: [] }] : items,
  ),
  "currents in mA": (text) =>
    text.replace(/(\b(?:Ib|leakage)\s+)([\d.]+) A\b/g, (_, word, amps) => `${word}${figure(amps, 1000)} mA`),
  "loads in W": (text) => text.replace(/\b([\d.]+) kW\b/g, (_, kilowatts) => `${figure(kilowatts, 1000)} W`),
  "source stated": stated(/^supply\b/, "source public"),
  "phases of the supply stated": stated(/^supply\b/, "phases single"),
  "phases of boards stated": boardPhases,
  "U0 stated": stated(/^supply\b/, "U0 230 V"),
  // That of a motor is asked about where nobody states it.
  "power factor stated": (text) => (/motor/.test(text) ? text : stated(/^way /, "power-factor 100 %")(text)),
  "terminals stated": stated(/^way /, "terminals 70 °C"),
  "ambient stated": onRoutes(/./, new RegExp(`ambient|${inGround.source}`), "ambient 30 °C"),
  "ambient in the ground stated": onRoutes(inGround, /ambient/, "ambient 20 °C"),
  "soil stated": onRoutes(inGround, /soil/, "soil 2.5 K·m/W"),
  "depth stated": onRoutes(inGround, /depth/, "depth 700 mm"),
  "routes in two sections": blocks(inSections),
  "designs as circuit types": asTypes,
};
