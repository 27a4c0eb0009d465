// Types a schedule of ten ways into an empty file of the real editor, key by key, and counts the keys.
//   node tests/editor/typing.mjs [PICTURES]     the extension as built by npm run build
// Fails where a key more than 700 is needed, where the text is not the one that was meant, or where it has faults of the
// language.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { openWorkbench } from "./launcher/lib/workbench.mjs";

const root = join(import.meta.dirname, "../..");
const pictures = resolve(process.argv[2] ?? join(root, ".build/typing"));
const most = 700;
mkdirSync(pictures, { recursive: true });

/** A way by what it is for: what is typed to find it, its title, and what is put into its stops. */
const ways = [
  ["socketsr", "Ground floor sockets", ["", "", "", "54"]],
  ["socketsr", "First floor sockets", ["", "", "", "48"]],
  ["socketsr", "Kitchen sockets", ["", "4", "", "36"]],
  ["cook", "Cooker", ["", "", "", "9"]],
  ["show", "Shower", ["", "", "", "11"]],
  ["water", "Immersion", ["", "", "", "12"]],
  ["light", "Ground floor lighting", ["", "", "ce", "26"]],
  ["light", "First floor lighting", ["", "", "ce", "23"]],
  ["alarm", "Smoke alarms", ["", "", "ce", "21"]],
  ["lighting", "Garage lighting", ["", "", "", "14"]],
];

const folder = mkdtempSync(join(tmpdir(), "wayfile-typing-"));
const file = join(folder, "house.ways");
writeFileSync(file, "");
const { page, close } = await openWorkbench({
  folder,
  file,
  extensionDevelopmentPath: [root],
  settings: { "editor.minimap.enabled": false, "workbench.reduceMotion": "on", "files.eol": "\n" },
});
let count = 0;
const picture = (name) => page.screenshot({ path: join(pictures, `${name}.png`) });
const suggestions = page.locator(".suggest-widget.visible .monaco-list-row");

/** One key. */
async function press(key) {
  count++;
  await page.keyboard.press(key);
}
/** Signs, each of which is a key. */
async function type(text) {
  for (const sign of text) {
    count++;
    await page.keyboard.type(sign);
    await page.waitForTimeout(60);
  }
}
/** A person looks before taking what is offered. */
async function take(label) {
  await page.locator(".suggest-widget.visible .monaco-list-row.focused", { hasText: label }).first().waitFor();
  await press("Tab");
  await page.waitForTimeout(400);
}
/** Puts something into a stop and goes on to the next. */
async function fill(text) {
  if (text !== "") await type(text);
  await page.waitForTimeout(200);
  await press("Tab");
  await page.waitForTimeout(300);
}

/** The server is up once it offers something. */
async function ready() {
  for (let left = 400; left > 0; left--) {
    await page.keyboard.press("Control+Space");
    await page.waitForTimeout(1000);
    const isUp = (await suggestions.count()) > 3;
    await page.keyboard.press("Escape");
    if (isUp) return;
  }
  throw new Error("The server offers nothing.");
}

try {
  await page.locator(".editor-instance .monaco-editor").first().click();
  // The server is up once it offers something.
  await page.locator(".monaco-editor .view-line").first().waitFor();
  await ready();
  await type("w");
  await picture("1-empty");
  await take("wayfile");
  await picture("2-schedule");
  for (const text of ["Alder House", "", "", "", "", "0.3", "1.1", "", "Consumer unit", ""]) await fill(text);
  await picture("3-head");
  console.log(`to the first way: ${count} keys`);
  for (const [index, [word, title, stops]] of ways.entries()) {
    const before = count;
    if (index > 0) await press("Enter");
    await type(word);
    await take(word.replace("socketsr", "sockets-ring"));
    await fill(title);
    for (const text of stops) await fill(text);
    await picture(`4-way-${index + 1}`);
    console.log(`${title}: ${count - before} keys`);
  }
  const board = count;
  console.log(`${board} keys from the empty file to ten ways`);
  if (board > most) throw new Error(`${board} keys are more than ${most}.`);

  // A way by hand, as fast as a person types: Enter breaks each line the first time, whatever list is open.
  const byHand = [
    "device BS EN 61009 B32 6 kA 30 mA type A",
    "cable flat-twin line 2.5 mm² cpc 1.5 mm²",
    "route clipped method C",
    "length 12 m",
    "serves sockets",
    "load 3 kW",
    "Ib 11 A",
  ];
  await press("Enter");
  await type('way 11 radial "Yard" {');
  await press("Enter");
  for (const line of byHand) {
    await type(line);
    await press("Enter");
  }
  await picture("5-by-hand");
  await press("ArrowDown");
  await press("End");

  // And one whose lines go on by themselves: the first letters, then Tab for what comes next.
  await press("Enter");
  await type('way 12 radial "Boiler" {');
  await press("Enter");
  for (const [start, tabs] of [
    ["de", 6],
    ["ca", 5],
    ["ro", 3],
  ]) {
    await type(start);
    await take("");
    for (let left = tabs; left > 0; left--) {
      await suggestions.first().waitFor();
      await page.waitForTimeout(300);
      if (left === 1) await picture(`6-${start}`);
      await press("Tab");
      await page.waitForTimeout(300);
    }
    await press("Enter");
  }
  await page.keyboard.press("Control+S");
  await page.waitForTimeout(2000);
  await picture("7-end");
  const text = readFileSync(file, "utf8");
  console.log(text.slice(text.indexOf("way 9 ")));
  const bare = text.split("\n").map((line) => line.trim().replace(/\s+/g, " "));
  const missing = byHand.filter((line) => !bare.includes(line));
  if (missing.length > 0) throw new Error(`Enter did not break: ${missing.join("; ")}`);
  const wayfile = join(root, "dist/wayfile.cjs");
  const { stdout } = spawnSync(process.execPath, [wayfile, "check", "--format", "json", file], { encoding: "utf8" });
  const faults = (stdout.match(/"language\/[a-z-]+"/g) ?? []).length;
  if (faults > 0) throw new Error(`${faults} faults of the language in what was laid out.`);
  console.log("1 passed, 0 failed");
} catch (error) {
  await picture("failed");
  throw error;
} finally {
  await picture("end");
  await close();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
