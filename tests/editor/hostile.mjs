// What a stranger wrote into a schedule, in every page that the program writes, opened in a real browser: nothing runs,
// nothing is fetched, and it stands there as it was written. Where escaping failed, the policy of the page would still
// hold it; that is tried, too, by putting the same into the page behind its back.
//   node tests/editor/hostile.mjs      what npm run build made
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { hostileSchedule } from "../helpers/hostile.ts";
import { openBrowser } from "./launcher/lib/page.mjs";
import { openWorkbench } from "./launcher/lib/workbench.mjs";

const root = join(import.meta.dirname, "../..");
const folder = mkdtempSync(join(tmpdir(), "wayfile-hostile-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));

/** What would run, if anything of it did. */
const ran = "window.ran=1";
const tags = `</title></script></style><img src=x onerror=${ran}><svg onload=${ran}><script>${ran}</script>`;
const rest =
  '<a href="javascript:window.ran=1">a</a> ![p](https://nowhere.invalid/p.png) [l](javascript:window.ran=1) `b` | ' +
  `<img src="data:image/svg+xml,<svg onload=${ran}>"> <iframe srcdoc='<script>parent.ran=1</script>'> {{7*7}} \${${ran}} &lt; --> ]]>`;
const steering =
  "\u001b[31m\u009b2J\u202e\u2066\u0007 <style>@import 'https://nowhere.invalid/c.css';*{display:none}</style>";
const stranger = tags + rest + steering;
/** Git takes angle brackets out of names. */
const author = "J &amp; ![p](https://nowhere.invalid/p.png) `b`";

const git = (...words) =>
  execFileSync("git", ["-c", `user.name=${author}`, "-c", "user.email=a@invalid", ...words], {
    cwd: folder,
    stdio: "ignore",
  });

function writeSchedules() {
  const periodic = readFileSync(join(root, "examples/alder-row/periodic.ways"), "utf8");
  const own = periodic.replace(/^use .*$/m, 'instrument M1 "Meter" { due 2027-01-01 }');
  git("init", "-q");
  const schedule = hostileSchedule(stranger);
  writeFileSync(join(folder, "a.ways"), schedule.replace(/^(\s*Zs\s+)\d[\d.]*( Ω)/m, "$10.41$2"));
  writeFileSync(join(folder, "inspected.ways"), hostileSchedule(stranger, own));
  git("add", ".");
  git("commit", "-qm", `<img src=x onerror=${ran}>`);
  writeFileSync(join(folder, "a.ways"), schedule);
  git("commit", "-qam", "<script>");
}

const commands = [
  ...["working", "summary", "editions", "worksheet", "schedule"].map((command) => [command, "--format", "html"]),
  ["schedule", "--last", "--format", "html"],
  ["worksheet", "--again", "--format", "html"],
  ["worksheet", "--fill"],
  ["inspection", "--format", "html"],
  ["register", "--no-cache", "--format", "html"],
  ["compare", "HEAD~1", "--format", "html"],
  ["history", "--format", "html"],
];

/** A page that a command writes of a schedule. */
function pageOf(command) {
  const file = command[0] === "inspection" ? "inspected.ways" : "a.ways";
  const words = [join(root, "dist/wayfile.cjs"), ...command, file];
  const { stdout, stderr } = spawnSync(process.execPath, words, { cwd: folder, encoding: "utf8", maxBuffer: 2 ** 26 });
  assert.match(stdout, /^<!doctype html>/i, `${command.join(" ")} ${file}: ${stderr}`);
  return stdout;
}

/** Opens a page, and what came of it. */
async function opened(browser, text) {
  const path = join(folder, "page.html");
  writeFileSync(path, text);
  const page = await browser.newPage();
  const requests = [];
  let asked = 0;
  page.on("request", (request) => requests.push(request));
  page.on("dialog", (dialog) => {
    asked++;
    return dialog.dismiss();
  });
  await page.goto(pathToFileURL(path).href);
  const seen = await page.evaluate(() => ({
    ran: window.ran,
    shown: document.body.innerText,
    title: document.title,
    links: [...document.querySelectorAll("a[href], area[href], [src], [srcdoc], [action], use")].map(
      (one) => one.outerHTML,
    ),
    handlers: [...document.querySelectorAll("*")].flatMap((one) =>
      one.getAttributeNames().filter((attribute) => attribute.startsWith("on")),
    ),
  }));
  await page.close();
  // What the policy of the page refused was never sent.
  const sent = requests.filter((request) => !/csp/i.test(request.failure()?.errorText ?? "")).map((one) => one.url());
  return { ...seen, asked, fetched: sent.filter((url) => url !== pathToFileURL(path).href) };
}

/** Signs that would steer are shown as one that does not; spaces are as wide as the page likes. */
const plain = (text) => text.replace(/[\s\u00a0]+/g, "").replace(/\p{Cc}|\p{Cf}|\ufffd/gu, "");

const browser = await openBrowser();
let passed = 0;
try {
  writeSchedules();

  // Otherwise the rest would show nothing.
  const bare = await opened(browser, `<!DOCTYPE html><title>x</title><body>${tags}${rest}`);
  assert.equal(bare.ran, 1);
  assert.ok(bare.fetched.length > 0 && bare.handlers.length > 0 && bare.links.length > 0);
  passed++;

  for (const command of commands) {
    const what = command.join(" ");
    const page = pageOf(command);
    const { shown, title, ...seen } = await opened(browser, page);
    assert.deepEqual(seen, { ran: undefined, links: [], handlers: [], asked: 0, fetched: [] }, what);
    assert.doesNotMatch(title, /\p{Cc}|\u202e/u);
    const written = plain(command[0] === "history" ? author : stranger);
    assert.ok(plain(shown).includes(written), `${what}: not as it is written in ${shown.slice(0, 600)}`);
    // As if it had not been escaped.
    const held = await opened(
      browser,
      page.replace(/<body[^>]*>/, () => `<body>${stranger}`),
    );
    assert.deepEqual([held.ran, held.asked], [undefined, 0], `${what}: the policy lets it run`);
    const fetched = held.fetched.filter((url) => !url.startsWith("data:"));
    assert.deepEqual(fetched, [], `${what}: the policy lets it fetch`);
    passed++;
    console.log(`  ✓ ${command.join(" ")}`);
  }
  await hoverInTheEditor();
  passed++;
  console.log("  ✓ the hovers and the problems of the editor");
  console.log(`${passed} passed`);
} finally {
  await browser.close();
}

/** What the editor makes of our Markdown: pictures of our own and words, no more. */
async function hoverInTheEditor() {
  const file = join(folder, "hovered.ways");
  const text = hostileSchedule(rest);
  writeFileSync(file, text);
  const { page, close } = await openWorkbench({ folder, file, extensionDevelopmentPath: [root] });
  const fetched = [];
  page.on("request", (request) => /nowhere\.invalid/.test(request.url()) && fetched.push(request.url()));
  try {
    await page.locator(".squiggly-error, .squiggly-warning, .squiggly-info").first().waitFor({ state: "attached" });
    const lines = text.split("\n");
    for (const word of ["installation", "way 3", "query", "instrument"]) {
      const line = lines.findIndex((one) => one.trim().startsWith(word));
      await page.keyboard.press("Control+1");
      await page.keyboard.press("Control+G");
      const input = page.locator(".quick-input-widget:visible input").first();
      await input.fill(`:${line + 1}:${lines[line].indexOf('"') + 3}`);
      await page.keyboard.press("Enter");
      await input.waitFor({ state: "hidden" });
      await page.keyboard.press("Control+K");
      await page.keyboard.press("Control+I");
      const hover = page.locator(".monaco-resizable-hover .monaco-hover:visible").first();
      await hover.getByText("nowhere.invalid").first().waitFor();
      const seen = await hover.evaluate((node) => ({
        images: [...node.querySelectorAll("img")]
          .map(({ src }) => src)
          .filter((src) => !src.startsWith("data:image/svg")),
        // An address is a link where it stands as it is; what says one thing and leads to another would be a trap.
        links: [...node.querySelectorAll("a[data-href], a[href]")]
          .map((one) => [one.textContent, one.getAttribute("data-href") ?? one.getAttribute("href")])
          .filter(([shown, to]) => /^(?:javascript|command|data):/.test(to) || (/nowhere/.test(to) && shown !== to)),
        others: [...node.querySelectorAll("iframe, script, style, svg[onload]")].map((one) => one.outerHTML),
        ran: window.ran,
      }));
      assert.deepEqual(seen, { images: [], links: [], others: [], ran: undefined }, `the hover over ${word}`);
      await page.keyboard.press("Escape");
    }
    assert.deepEqual(fetched, []);
  } finally {
    await close();
  }
}
