/** Where a PDF sets its texts: within the sheet, and none over another, as another library reads their places back. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { getDocumentProxy } from "unpdf";
import { describe, expect, test } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { pdfOf } from "../../server/papers/pdf.ts";
import { scheduleOf } from "../../server/reports/schedule/schedule.ts";
import type { Report } from "../../server/reports/setting/document.ts";
import { worksheet } from "../../server/reports/worksheet/worksheet.ts";
import { gather } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const examples = resolve(import.meta.dirname, "../../examples");
const disk = {
  file: (path: string) => fileOfText(path, readFileSync(path, "utf8")),
  resolve: (from: string, use: string) => resolve(from, "..", use),
};

/** In points, from the lower left corner of the sheet; a turned text stands on its side. */
interface Placed {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly Placed[];
}

async function sheetsOf(report: Report): Promise<Sheet[]> {
  const pdf = await getDocumentProxy(new Uint8Array(await pdfOf(report)));
  return await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, at) => {
      const page = await pdf.getPage(at + 1);
      const { width, height } = page.getViewport({ scale: 1 });
      const { items } = await page.getTextContent();
      const texts = (items as readonly Item[]).flatMap((item) => (item.str?.trim() ? [placed(item, item.str)] : []));
      return { width, height, texts };
    }),
  );
}

interface Item {
  readonly str?: string;
  readonly transform: readonly number[];
  readonly width: number;
}

function placed(item: Item, text: string): Placed {
  const [a = 0, b = 0, c = 0, d = 0, x = 0, y = 0] = item.transform;
  const size = Math.hypot(c, d);
  // Along the text, and across it as high as a small letter, which is half its size.
  const [alongX, alongY] = [(item.width * a) / size, (item.width * b) / size];
  const [acrossX, acrossY] = [c / 2, d / 2];
  const [xs, ys] = [
    [x, x + alongX, x + acrossX, x + alongX + acrossX],
    [y, y + alongY, y + acrossY, y + alongY + acrossY],
  ];
  return {
    text,
    left: Math.min(...xs),
    right: Math.max(...xs),
    bottom: Math.min(...ys),
    top: Math.max(...ys),
  };
}

/** Kerning lets neighbours touch by less than a point. */
const touch = 0.8;

const overlaps = (one: Placed, other: Placed): boolean =>
  Math.min(one.right, other.right) - Math.max(one.left, other.left) > touch &&
  Math.min(one.top, other.top) - Math.max(one.bottom, other.bottom) > touch;

const imprint = { file: "a.ways", revision: "1234abcd", printed: "2026-05-04" };
const long = `wayfile 1
installation "Long" {
  standard BS 7671:2018+A2:2022
  stage tested
  board A "Main" {
${Array.from({ length: 12 }, (_, at) => `    way ${at + 1} radial "${"Sockets on the bench by the window, and the ones behind it ".repeat(3)}" { device BS EN 61009 B16 6 kA 30 mA type A }`).join("\n")}
  }
}`;
const papers: readonly (readonly [string, () => Report | undefined])[] = [
  ...["heron-wharf/boatyard", "larkfield/cottage"].map((name): readonly [string, () => Report | undefined] => [
    `schedule of ${name}`,
    () => {
      const { files } = gather(disk.file(`${examples}/${name}.ways`), disk);
      const [installation] = installationsOf(files);
      return installation && { ...scheduleOf(installation), imprint };
    },
  ]),
  [
    "schedule with long titles",
    () => {
      const [installation] = installationsOf([fileOfText("long.ways", long)]);
      return installation && { ...scheduleOf(installation), imprint };
    },
  ],
  [
    "worksheet",
    () => {
      const { files } = gather(disk.file(`${examples}/larkfield/cottage.ways`), disk);
      const [installation] = installationsOf(files);
      return installation && { ...worksheet(installation, {}), imprint };
    },
  ],
];

describe.each(papers)("the %s", (_, make) => {
  const report = make();
  const sheets = report ? sheetsOf(report) : Promise.resolve([]);

  test("has every text within its sheet", async () => {
    const beyond = (await sheets).flatMap(({ width, height, texts }) =>
      texts.filter(
        ({ left, right, bottom, top }) => left < 20 || right > width - 20 || bottom < 15 || top > height - 15,
      ),
    );
    expect(beyond).toEqual([]);
    expect((await sheets).map(({ texts }) => texts.length > 20)).not.toContain(false);
  });

  // What lies beyond its edge is no text of a page: so the number has to be found.
  test("has the number of each sheet at its foot", async () => {
    const all = await sheets;
    const numbers = all.map(({ texts }) => texts.flatMap(({ text }) => /^page \d+ of \d+$/.exec(text)?.[0] ?? []));
    expect(numbers).toEqual(all.map((_, at) => [`page ${at + 1} of ${all.length}`]));
  });

  test("has no text over another", async () => {
    const over = (await sheets).flatMap(({ texts }) =>
      texts.flatMap((one, at) =>
        texts.slice(at + 1).flatMap((other) => (overlaps(one, other) ? [`${one.text} / ${other.text}`] : [])),
      ),
    );
    expect(over).toEqual([]);
  });
});

test("a table of words too wide for their sheet has each of its columns on it", async () => {
  const names = ["one", "two", "three", "four", "five", "six"].map((name) => `${name}${"-and-on".repeat(6)}`);
  const long = "unhyphenatedexpressionoffortysixlettersinoneword".slice(0, 46);
  const [sheet] = await sheetsOf({
    title: "Wide",
    lead: [],
    sections: [
      {
        level: 1,
        title: "Words",
        blocks: [{ kind: "table", head: ["1", "2", "3", "4", "5", "6"], rows: [names, names.map(() => long)] }],
      },
    ],
    cautions: "",
  });
  const texts = sheet?.texts ?? [];
  const beyond = texts.filter(({ left, right }) => left < 20 || right > (sheet?.width ?? 0) - 20);
  expect(beyond).toEqual([]);
  // What is broken is read on from line to line of its column: nothing of it is lost.
  const columns = Map.groupBy(texts, ({ left }) => Math.round(left));
  const read = [...columns.values()].map((column) => column.map(({ text }) => text).join(""));
  for (const name of names) expect(read.filter((column) => column.includes(`${name}${long}`))).toHaveLength(1);
});
