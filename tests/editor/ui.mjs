// Pictures of the extension at work, into .build/screens/, to be looked at by a
// person: the faulty example with the Problems view, hovers, completion, the outline of
// ways and the fixes offered.
//   node tests/editor/ui.mjs [FOLDER] [THEME]      the extension as built by npm run build
import { execFileSync } from "node:child_process";
import { cpSync, globSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join, resolve } from "node:path";
import { openWorkbench } from "./launcher/lib/workbench.mjs";

const root = join(import.meta.dirname, "../..");
const [, , to = join(root, ".build/screens"), theme = "Default Light Modern"] = process.argv;
const pictures = resolve(to);
mkdirSync(pictures, { recursive: true });

// A copy: the editor may save.
const temporary = mkdtempSync(join(tmpdir(), "wayfile-ui-"));
const folder = join(temporary, "examples");
cpSync(join(root, "examples"), folder, { recursive: true });
const [name] = globSync("**/*faulty*.ways", { cwd: folder }).sort().reverse();
const file = join(folder, name);
const text = readFileSync(file, "utf8");
const lines = text.split("\n");
commitBefore();

const { page, close } = await openWorkbench({
  folder,
  file,
  extensionDevelopmentPath: [root],
  onLog: (text) => process.env.WAYFILE_EDITOR_VERBOSE && console.error(text),
  // No fading: a picture is of one moment.
  settings: {
    "editor.minimap.enabled": false,
    "workbench.colorTheme": theme,
    "workbench.reduceMotion": "on",
  },
});
const picture = async (title) => {
  // What the mouse has come to rest on would say its own.
  await page.mouse.move(200, 600);
  await page.screenshot({ path: join(pictures, `${title}.png`) });
};
const press = async (...keys) => {
  for (const key of keys) await page.keyboard.press(key);
};

/** On a busy machine the editor takes the keys for the hover before it stands where it was sent, and shows none. */
async function showHover() {
  for (let asked = 0; asked < 10; asked++) {
    await press("Control+K", "Control+I");
    const shown = hover.waitFor({ timeout: 10_000 });
    if (await shown.then(() => true).catch(() => false)) return;
  }
  throw new Error("The editor shows no hover.");
}

const hover = page.locator(".monaco-resizable-hover .monaco-hover:visible").first();
const editor = page.locator(".editor-instance .monaco-editor").first();
try {
  await editor.waitFor();
  await press("Control+Shift+M");
  // The extension is up once its first finding is listed. A click shows its place.
  const problem = page.locator(".markers-panel .monaco-list-row .marker-icon").first();
  await problem.waitFor();
  await problem.click();
  await page.locator(".squiggly-error, .squiggly-warning, .squiggly-info").first().waitFor({ state: "attached" });
  await picture("1-problems");

  // The first two readings that are judged; the faults are mostly one a way, and the second is in order. The Problems
  // view makes room.
  await press("Control+J");
  const reading = lines.findIndex((line) => /^\s*Zs\s+\d/.test(line));
  const other = lines.findIndex((line, at) => at > reading && /^\s*Zs\s+\d/.test(line));
  for (const [title, line] of [
    ["2-hover-on-a-finding", reading],
    ["3-hover", other],
  ]) {
    await goTo(line + 1, lines[line].search(/\S+\s*$/) + 1);
    await showHover();
    // A finding is shown at once; the limit and its working come when the server has answered.
    await hover
      .getByText(/limit, hot/)
      .first()
      .waitFor();
    await picture(title);
    if (line === reading) await pictureForReadme();
    await press("Escape");
  }

  // What a new line in a way may hold.
  const way = lines.findIndex((line) => /^\s*way .*\{/.test(line));
  await goTo(way + 1, lines[way].length + 1);
  await press("Enter", "Control+Space");
  await page.locator(".suggest-widget:visible .monaco-list-row").first().waitFor();
  await picture("4-completion");
  await press("Escape", "Control+Z");

  // The outline.
  await press("Control+Shift+O");
  await page.locator(".quick-input-widget:visible .monaco-list-row").nth(2).waitFor();
  await picture("5-outline");
  await press("Escape");

  // The live board beside the text, the tree of schedules, and what the menu of a schedule offers.
  await page.getByRole("button", { name: "Wayfile Schedules" }).first().click();
  await press("Control+1", "Control+K", "Control+Alt+L");
  const board = page.frameLocator("iframe.webview").frameLocator("iframe");
  await board.locator("tbody tr").first().waitFor();
  await picture("6-live-board");
  await board.getByRole("tab", { name: /single line/i }).click();
  await board.getByRole("toolbar", { name: "Size of the drawing" }).waitFor();
  await picture("7-single-line");
  await press("Control+1");
  await page.getByRole("button", { name: "Wayfile", exact: true }).first().click();
  await page.locator(".monaco-menu:visible").first().waitFor();
  await picture("8-menu");
  await press("Escape");

  // The schedule beside what it was before, with a margin behind each line that changed; the same in words.
  await command("Wayfile: Compare with a Revision");
  await page.locator(".quick-input-widget:visible .monaco-list-row").nth(1).waitFor();
  await picture("9-which-revision");
  await press("ArrowDown", "Enter");
  await goToFirstChange();
  // What stands behind a line is no text of the page but of its style.
  await page.waitForFunction(() =>
    [...document.querySelectorAll(".modified .view-line span")].some((one) =>
      getComputedStyle(one, "::before").content.includes("was 0.41"),
    ),
  );
  await picture("10-beside-a-revision");
  await onlyTheSchedule();
  await command("Wayfile: What Changed since a Revision");
  await page.locator(".quick-input-widget:visible .monaco-list-row").nth(1).waitFor();
  await press("ArrowDown", "Enter");
  const preview = page.frameLocator("iframe.webview").last().frameLocator("iframe");
  await preview.getByRole("heading").first().waitFor();
  await picture("11-changes-in-words");
  await onlyTheSchedule();

  // All installations of the folder.
  await command("Wayfile: Register of Installations");
  await page.locator(".quick-input-widget:visible").getByText("Heron Wharf").first().waitFor();
  await picture("12-register");
  await press("Escape");

  // A question beside a line, and its answer: what is written in a thread is a line of the schedule.
  await goTo(reading + 1, 1);
  await command("Comments: Add Comment on Current Selection");
  await say("Was this taken at the far socket?");
  await page.locator(".view-line", { hasText: "query" }).first().waitFor();
  await picture("13-a-question");

  // The fixes for a reading without its unit. Last, since it changes the text.
  await goTo(reading + 1, lines[reading].length + 1);
  await press("Shift+Home");
  await page.keyboard.insertText(lines[reading].replace(/^\s*(\S+\s+\d[\d.]*).*$/, "$1"));
  // The line that is being written is not marked, so there is no squiggle to wait for.
  const fix = page.locator(".action-widget:visible").getByText("Ω").first();
  for (let tries = 0; tries < 10 && !(await fix.isVisible()); tries++) {
    await press("Escape", "Control+.");
    await page.waitForTimeout(3_000);
  }
  await fix.waitFor();
  await picture("14-fixes");
  console.log(`pictures in ${pictures}`);
} catch (error) {
  await picture("failed");
  throw error;
} finally {
  await close();
  rmSync(temporary, { recursive: true, force: true, maxRetries: 5 });
}

/** The first thing a newcomer sees: the text, a line that is marked, and why. */
async function pictureForReadme() {
  const { x, y } = await editor.boundingBox();
  await page.screenshot({ path: join(pictures, "editor.png"), clip: { x, y: y + 85, width: 1040, height: 470 } });
}

/** A history: the schedule as it stood before a reading was altered and a query asked. */
function commitBefore() {
  const git = (...words) => execFileSync("git", words, { cwd: folder, stdio: "ignore" });
  const commit = (words) => git("-c", "user.name=Site", "-c", "user.email=site@invalid", "commit", "-qam", words);
  git("init", "-q");
  git("add", ".");
  writeFileSync(file, text.replace(/^(\s*Zs\s+)\d[\d.]*( Ω)/m, "$10.41$2"));
  commit("Readings of the first visit");
  writeFileSync(file, text);
  commit("One reading corrected");
}

/** Whatever else is open, and has the keys, is closed. */
async function onlyTheSchedule() {
  await command("View: Close All Editors");
  await page.locator(".editor-instance .monaco-editor, iframe.webview").first().waitFor({ state: "detached" });
  await press("Control+P");
  const input = page.locator(".quick-input-widget:visible input").first();
  await input.fill(basename(name));
  await page
    .locator(".quick-input-widget:visible .monaco-list-row", { hasText: basename(name) })
    .first()
    .waitFor();
  await press("Enter");
  await editor.waitFor();
}

/** In a comparison of two texts. */
async function goToFirstChange() {
  await page.locator(".monaco-diff-editor .modified .view-lines").first().waitFor();
  await page.waitForTimeout(2_000);
  await press("Alt+F5");
}

async function command(title) {
  await press("Control+Shift+P");
  const input = page.locator(".quick-input-widget:visible input").first();
  await input.waitFor();
  await input.fill(`>${title}`);
  await page.locator(".quick-input-widget:visible .monaco-list-row", { hasText: title }).first().waitFor();
  await press("Enter");
}

async function say(words) {
  const box = page.locator(".review-widget .monaco-editor").last();
  await box.click();
  await page.keyboard.type(words);
  await page.locator(".review-widget .monaco-button", { hasText: /\S/ }).last().click();
}

/** Puts the cursor into the editor, there. */
async function goTo(line, column) {
  await press("Control+1", "Control+G");
  const input = page.locator(".quick-input-widget:visible input").first();
  await input.waitFor();
  await input.fill(`:${line}:${column}`);
  await press("Enter");
  await input.waitFor({ state: "hidden" });
}
