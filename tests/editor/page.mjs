// The page of the live view in a real browser, with the real language server behind it: each view in each theme, narrow
// and enlarged, read by an accessibility checker; the way to a line and back; tests entered by keyboard, their keys
// counted; and the page that needs no editor. Pictures go into .build/screens/.
//   node tests/editor/page.mjs      what npm run build made
import assert from "node:assert/strict";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { viewKinds as views } from "../../server/views/kinds.ts";
import { openBrowser, openPage, startServer, themes } from "./launcher/lib/page.mjs";

const root = join(import.meta.dirname, "../..");
const pictures = join(root, ".build/screens");
mkdirSync(pictures, { recursive: true });
const hall = join(root, "examples/copper-lane/hall-faulty.ways");
const wharf = join(root, "examples/heron-wharf/boatyard.ways");

const browser = await openBrowser();
let passed = 0;
const test = async (name, run) => {
  await run();
  passed++;
  console.log(`  ✓ ${name}`);
};

async function withPage(file, options, run, text) {
  const server = await startServer(file, text);
  const opened = await openPage({ browser, server, ...options });
  try {
    await opened.page.waitForSelector("h1");
    await run(opened, server);
    assert.deepEqual(opened.problems, []);
  } finally {
    await opened.close();
    await server.stop();
  }
}

/** Nothing is cut off: the page itself never scrolls sideways, only a drawing or a grid in it does. */
const overflow = (page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

try {
  for (const theme of Object.keys(themes))
    await test(`all views in ${theme}: nothing to find for a checker of accessibility`, async () => {
      const server = await startServer(hall);
      for (const view of views) {
        const { page, axe, close, problems } = await openPage({ browser, server, theme, state: { view } });
        await page.waitForSelector("h1");
        assert.deepEqual(await axe(), [], view);
        assert.deepEqual(problems, [], view);
        await page.screenshot({ path: join(pictures, `view-${view}-${theme}.png`), fullPage: view !== "working" });
        await close();
      }
      await server.stop();
    });

  await test("on a narrow page and at 200 % nothing is cut off", async () => {
    const server = await startServer(hall);
    for (const [name, size] of Object.entries({
      narrow: { width: 360, height: 720 },
      200: { width: 500, height: 450 },
    }))
      for (const view of views) {
        const { page, close } = await openPage({ browser, server, size, state: { view } });
        await page.waitForSelector("h1");
        assert.ok((await overflow(page)) <= 0, `${view}, ${name}: wider than the page by ${await overflow(page)}`);
        await page.screenshot({ path: join(pictures, `view-${view}-${name}.png`) });
        await close();
      }
    await server.stop();
  });

  await test("a name as long as a sentence cuts nothing off, narrow and at 200 %", async () => {
    const name =
      "The old rope store and the net loft above it, with both of its lean-to sheds and the yard behind them";
    const server = await startServer(hall, readFileSync(hall, "utf8").replaceAll("Hall board", name));
    for (const size of [
      { width: 330, height: 700 },
      { width: 550, height: 400 },
    ])
      for (const view of views) {
        const { page, close } = await openPage({ browser, server, size, state: { view } });
        await page.waitForSelector("h1");
        assert.ok((await overflow(page)) <= 0, `${view} at ${size.width}: wider by ${await overflow(page)}`);
        await close();
      }
    await server.stop();
  });

  await test("a way leads to its line, and the line to its way", async () => {
    await withPage(hall, {}, async ({ page, revealed, moveTo }, server) => {
      const line = server.text.split("\n").findIndex((one) => one.includes("way 2 radial"));
      await page.getByRole("button", { name: "2 Stage dimmers" }).click();
      assert.equal(revealed.at(-1)?.line, line);
      await moveTo(line + 3);
      await page.waitForSelector("tr.current");
      assert.match(await page.locator("tr.current").innerText(), /Stage dimmers/);
    });
  });

  await test("a drawing is walked by arrows and followed by Enter, and keeps its place after an edit", async () => {
    await withPage(hall, { state: { view: "rings" } }, async ({ page, revealed, show }, server) => {
      await page.locator("svg a.thing[tabindex='0']").focus();
      await page.keyboard.press("ArrowRight");
      const before = await page.evaluate(() => document.activeElement?.getAttribute("data-key"));
      await page.keyboard.press("Enter");
      assert.equal(revealed.length, 1);
      await server.change(server.text.replace("L-N 0.16 Ω  L-E 0.22 Ω", "L-N 0.17 Ω  L-E 0.22 Ω"));
      await show();
      await page.locator("svg text", { hasText: "0.17 Ω" }).first().waitFor();
      assert.equal(await page.evaluate(() => document.activeElement?.getAttribute("data-key")), before);
    });
  });

  await test("sorted by margin the worst comes first, and what is well can be left out", async () => {
    await withPage(hall, {}, async ({ page }) => {
      await page.getByLabel("Sort by").selectOption("margin");
      assert.match(await page.locator("tbody tr").first().innerText(), /Kitchen boiler/);
      const all = await page.locator("tbody tr").count();
      await page.getByLabel(/Only ways with something to do/).check();
      assert.equal(await page.locator("tbody tr").count(), all - 1);
    });
  });

  await test("a broken text leaves the last picture, and says so", async () => {
    await withPage(hall, {}, async ({ page, show }, server) => {
      await server.change("wayfile 1\n");
      await show();
      await page.getByRole("status").getByText("There is no installation").waitFor();
      assert.equal(await page.locator("tbody tr").count(), 7);
    });
  });

  await test("what a schedule says cannot become part of the page", async () => {
    const text = readFileSync(hall, "utf8").replaceAll("Kitchen boiler", "<img src=x onerror=alert(1)><script>");
    const run = async ({ page }) => {
      assert.equal(await page.locator("main img, main script").count(), 0);
      assert.match(await page.locator("main").innerText(), /<img src=x/);
    };
    await withPage(hall, {}, run, text);
    await withPage(hall, { state: { view: "single-line" } }, run, text);
  });

  await test("a conduit is drawn as it is cut across, in the colours of its cores", async () => {
    await withPage(wharf, { state: { view: "conduits", board: "W" } }, async ({ page, axe }) => {
      assert.ok((await page.locator("svg circle.filled").count()) > 5);
      assert.deepEqual(await axe(), []);
      await page.screenshot({ path: join(pictures, "view-conduits-wharf.png"), fullPage: true });
    });
  });

  const way = (number) => {
    const [kind, size, metres] = number <= 3 ? ["ring", "B32", 50] : ["radial", "B16", 14];
    return `    way ${number} ${kind} "Circuit ${number}" {
      device BS EN 61009 ${size} 6 kA 30 mA type A
      cable flat-twin line 2.5 mm² cpc 1.5 mm²
      length ${metres} m
      serves ${kind === "ring" ? "sockets" : "appliance"}
    }
`;
  };
  const twelve = `wayfile 1
installation "House" {
  standard BS 7671:2018+A2:2022
  stage tested
  supply {
    earthing TN-S
    Ze 0.30 Ω
  }
  board A "Board" {
    fed-from supply
${Array.from({ length: 12 }, (_, at) => way(at + 1)).join("")}  }
}
`;
  const readings = { r1: "0.37", rn: "0.37", r2: "0.61", "R1+R2": "0.24", "L-N": ">999", Zs: "0.54", "RCD 1×": "24" };

  await test("a board of twelve ways is entered in at most 600 keys, and undone", async () => {
    const state = { view: "tests" };
    await withPage(
      join(root, "house.ways"),
      { state },
      async ({ page, settled, axe }, server) => {
        let keys = 0;
        const press = async (key) => {
          keys++;
          await page.keyboard.press(key);
        };
        await page.locator("td.cell").first().focus();
        const here = () =>
          page.evaluate(() => {
            const cell = document.activeElement?.closest("[data-cell]");
            return cell?.classList.contains("open") ? cell.getAttribute("data-cell") : null;
          });
        for (let cell = await here(), before = ""; cell && cell !== before; before = cell, cell = await here()) {
          const column = cell.split("|")[1];
          const text = readings[column];
          if (text) for (const sign of text) await press(sign);
          if (text) await press("Enter");
          else await press(/^[LN]-/.test(column) ? "=" : "o");
          assert.ok(keys <= 600, "more than 600 keys");
        }
        await settled();
        await page.waitForFunction(() => document.querySelectorAll("td.open").length === 0);
        console.log(`    ${keys} keys for twelve ways`);
        assert.equal(server.text.match(/Zs +0\.54 Ω/g)?.length, 12);
        assert.equal(server.text.match(/ends +r1 0\.37 Ω rn 0\.37 Ω r2 0\.61 Ω/g)?.length, 3);
        assert.equal(server.text.match(/insulation +500 V L-N >999 MΩ L-E >999 MΩ N-E >999 MΩ/g)?.length, 12);
        assert.deepEqual(await axe(), []);
        await page.screenshot({ path: join(pictures, "entered.png") });
        await page.keyboard.press("Control+z");
        await page.waitForFunction(() => document.querySelectorAll("td.open").length === 1);
        assert.equal(server.text.match(/test-button +ok/g)?.length, 11);
      },
      twelve,
    );
  });

  await test("a reading that cannot be is answered in its place, and a correction asks for its reason", async () => {
    const state = { view: "tests" };
    await withPage(hall, { state }, async ({ page }, server) => {
      const before = server.text;
      await page.getByLabel("Day of the tests").fill("2026-03-10");
      await page.getByLabel("Day of the tests").press("Enter");
      const Zs = page.locator('[data-cell="1|Zs"]');
      await Zs.click();
      await page.keyboard.type("0,5");
      await page.keyboard.press("Enter");
      await page.getByRole("status").getByText("Write a point").waitFor();
      assert.equal(server.text, before);
      await page.keyboard.press("Escape");
      await Zs.click();
      await page.keyboard.type("0.50");
      await page.keyboard.press("Enter");
      await page.getByText("0.89 Ω stands there for that day").waitFor();
      assert.equal(server.text, before);
      await page.keyboard.type("read at the wrong way");
      await page.keyboard.press("Enter");
      await Zs.getByText("0.50 Ω").waitFor();
      assert.match(server.text, /Zs +0\.50 Ω was 0\.89 Ω "read at the wrong way"/);
    });
  });

  await test("the page without an editor checks what is pasted, and asks nobody", async () => {
    const page = await browser.newPage({ viewport: { width: 1300, height: 850 } });
    const asked = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.goto(`file://${join(root, "dist/wayfile.html")}`);
    await page.locator("table.board tbody tr").first().waitFor();
    await page.locator("textarea").fill(readFileSync(hall, "utf8"));
    await page
      .getByRole("button", { name: /Zs.*0\.89|loop/i })
      .first()
      .waitFor();
    await page.getByRole("tab", { name: "Rings" }).click();
    await page.locator("svg .suspect").first().waitFor();
    await page.evaluate(readFileSync(join(root, "node_modules/axe-core/axe.min.js"), "utf8"));
    const { violations } = await page.evaluate(() => window.axe.run());
    assert.deepEqual(
      violations.map(({ id }) => id),
      [],
    );
    await page.screenshot({ path: join(pictures, "alone.png") });
    assert.ok(
      asked.every((url) => url.startsWith("file:") || url.startsWith("blob:")),
      asked.join(" "),
    );
    await page.close();
  });

  console.log(`${passed} passed`);
} finally {
  await browser.close();
}
