/** Words and turns that must not come back into what a person reads. Each has a plain one of the trade in its place. */
import { globSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { pages } from "../server/rules/frame/catalogue.ts";
import { safeIsolation } from "../server/text/isolation.ts";
import { fileOfText } from "../server/workspace/loaded-file.ts";
import { checkProject } from "../server/workspace/project.ts";
import { Folder } from "./cli/run.ts";
import { inSetting, unmark } from "./helpers/sample.ts";

/** A pattern, and what to write instead. */
const unwanted: readonly (readonly [pattern: RegExp, instead: string])[] = [
  [/\breckon/i, "calculate"],
  [/\bquieten/i, "suppress"],
  [/\b(held|hold|holds) (it |them |this |nothing )?against\b/i, "compared with"],
  [/\bask(s|ed)? for\b(?! (a larger supply|a smaller cut-out|an RCD))/i, "require"],
  [/\bwithin the doubt\b|\bdoubt of\b/i, "uncertainty"],
  [/\bat once (its|the)\b|\bthan at once\b|× its rating/i, "1 × IΔn"],
  [/\b(of|less than|for) nothing\b/i, "zero; unwanted"],
  [/\bfor good\b/i, "continuously"],
  [/\bhad it easy\b/i, "proves nothing about"],
  [/\blets?\b[^.;:]*\bflow\b/i, "allows … continuously"],
  [/\bnothing (is said|says|tells|speaks)\b/i, "is not stated"],
  [/\b(is|are|was|were) (not )?(said|told)\b|\btold of\b/i, "stated, reported"],
  [/\bdoes not say\b/i, "does not state"],
  [/\bstands? (behind|here|there|on memory|beside)\b/i, "is protected by; is recorded"],
  [/\b(bears|borne)\b/i, "carries, withstands"],
  [/\bhangs? (on|in the air)\b/i, "depends on; is not connected"],
  [/\bspeaks? (for|against)\b/i, "supports, rules out"],
  [/\bgentler\b/i, "of lower trip current"],
  [/\bupside down\b/i, "inverted"],
  [/\btoo good to be true\b/i, "too low for …"],
  [/\btakes? the whole board with\b/i, "disconnects the whole board"],
  [/\bwhat will do is\b|\bwould do\.$/i, "use …; fit …"],
  [/\bcombined conductor\b/i, "PEN conductor"],
  [/\b(no|without|whose) hands\b|\bhands that\b/i, "signed, not signed"],
  [/\bpassed by [\d.]+ %/i, "exceeded by, missed by"],
  [/\bprove it dead\b/i, "dead tests"],
  [/\bInfinity\b|\bNaN\b|\bundefined\b|\[object/, "words for what cannot be calculated"],
];

/** Any of them, so that the thousands of texts without one are read once. */
const anyUnwanted = new RegExp(unwanted.map(([{ source }]) => source).join("|"), "i");

const slipsIn = (text: string): string[] =>
  anyUnwanted.test(text)
    ? unwanted.flatMap(([pattern, instead]) => {
        const found = pattern.exec(text);
        return found
          ? [`“${found[0]}” (write: ${instead}) in: ${text.slice(Math.max(0, found.index - 60), found.index + 80)}`]
          : [];
      })
    : [];

it("finds what must not come back, and what to write", () => {
  expect(slipsIn("Zs is held against its limit.")).toEqual([
    "“held against” (write: compared with) in: Zs is held against its limit.",
  ]);
  expect(slipsIn("Zs is compared with its limit.")).toEqual([]);
});

/** No stub: what stands in a list of related places has to be understood without the finding. */
const stub = /^(Behind it|The same test|Its \w+|Used here too|Upstream|The device|The reading|Here|There)\.$/i;

const alone = { file: () => ({ failure: "there is no such file." }), resolve: (_: string, use: string) => use };

/** What is found in a text. Checks share samples, and what sends a person to open something reads all of them again. */
function findingsIn(text: string) {
  const before = findingsByText.get(text);
  if (before) return before;
  const { files } = checkProject(fileOfText("words.ways", text), alone);
  const found = files.flatMap(({ findings }) =>
    findings.map(({ check, message, working, related, fixes }) => ({
      check,
      message,
      working: working ?? "",
      related: related.map((one) => one.message),
      fixes: fixes.map(({ title }) => title),
    })),
  );
  findingsByText.set(text, found);
  return found;
}

interface Worded {
  readonly check: string;
  readonly message: string;
  readonly working: string;
  readonly related: readonly string[];
  readonly fixes: readonly string[];
}
const findingsByText = new Map<string, readonly Worded[]>();

describe("the page of a check", () => {
  it.each(pages.map((page) => [page.id, page] as const))("%s", (_, { title, why }) => {
    expect([...slipsIn(title), ...slipsIn(why)]).toEqual([]);
    expect(title.length, "a title is one line").toBeLessThanOrEqual(110);
  });
});

/** The samples, and the same with each figure in turn as zero: what nobody meant to write gets an answer in words too. */
function texts(bad: string): string[] {
  const figures = [...bad.matchAll(/(?<=[ >])\d+(?:\.\d+)?(?= (?:k?A|mA|m?Ω|MΩ|ms|m|mm²|%|V|W|kW)\b)/g)].slice(0, 12);
  const zeros = figures.map(({ 0: figure, index }) => `${bad.slice(0, index)}0${bad.slice(index + figure.length)}`);
  return [bad, ...zeros];
}

describe("what is found in the samples", () => {
  it.each(pages.map((page) => [page.id, page] as const))("%s", (_, { examples }) => {
    const found = examples.flatMap(({ bad, setting }) =>
      texts(unmark(bad).text).flatMap((text) => findingsIn(inSetting(text, setting).text)),
    );
    const slips = found.flatMap(({ check, message, working, related, fixes }) => {
      const stubs = related.filter((one) => stub.test(one));
      return [...[message, working, ...related, ...fixes].flatMap(slipsIn), ...stubs].map(
        (slip) => `${check}: ${slip}`,
      );
    });
    expect(slips).toEqual([]);
  });
});

const folders = readdirSync("examples", { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".ways"));

/** What a person can only do with a cover off or a conductor out of its terminal. */
const opening =
  /\b(look at (its|the|their) [^.]*(clamp|joint|terminal)|look for (a |the )?(poor|loose|[^.]*damp)|disconnect (its|all|the|SPDs)|find the (break|damp)|interchange|put it right)/i;

describe("what sends a person to open something", () => {
  it("shows how to isolate first", () => {
    const sending = pages.flatMap(({ id, examples }) =>
      examples
        .flatMap(({ bad, setting }) => findingsIn(inSetting(unmark(bad).text, setting).text))
        .filter(({ check, message }) => check === id && opening.test(message)),
    );
    expect(sending.length).toBeGreaterThan(10);
    expect(sending.filter(({ working }) => !working.includes(safeIsolation)).map(({ message }) => message)).toEqual([]);
  });
});

describe("what is found in the examples", () => {
  it.each(folders)("%s", (path) => {
    const found = findingsIn(readFileSync(`examples/${path}`, "utf8"));
    expect(found.flatMap(({ message, working }) => [...slipsIn(message), ...slipsIn(working)])).toEqual([]);
  });
});

describe("a document", () => {
  it.each(["README.md", ...globSync("client/guide/*.md"), "grammar/REFERENCE.md", "package.json"])("%s", (path) => {
    expect(readFileSync(path, "utf8").split("\n").flatMap(slipsIn)).toEqual([]);
  });
});

/** The command line over the examples. */
const cli = (args: readonly string[]) => {
  const files = folders.map((path) => [path, readFileSync(`examples/${path}`, "utf8")] as const);
  return new Folder(Object.fromEntries(files)).run(...args);
};

describe("a report", () => {
  const schedules = ["heron-wharf/boatyard.ways", "copper-lane/hall-faulty.ways"];
  const commands = ["working", "worksheet", "summary", "editions"];
  it.each(schedules.flatMap((path) => commands.map((command) => [`${command} ${path}`, command, path] as const)))(
    "%s",
    async (_, command, path) => {
      const { out, err } = await cli([command, path]);
      expect(`${out}${err}`.split("\n").flatMap(slipsIn)).toEqual([]);
    },
  );
});

describe("the help of the command line", () => {
  it.each(["check", "fmt", "explain", "working", "worksheet", "size", "editions", "summary", "compare"])(
    "%s",
    async (command) => {
      const { out } = await cli([command, "--help"]);
      expect(out).not.toBe("");
      expect(out.split("\n").flatMap(slipsIn)).toEqual([]);
    },
  );
});
