/** What strangers write is shown in every hover as it is written: it fetches nothing, and looks like nothing of ours. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { complete } from "../../server/features/completion.ts";
import { hover } from "../../server/features/hover.ts";
import { reportOf } from "../../server/features/report.ts";
import { reportMarkdown } from "../../server/reports/setting/markdown.ts";
import { atCursor, openSample } from "../helpers/cursor.ts";
import { hostileSchedule, hostileText, obeyed } from "../helpers/hostile.ts";

/** Markdown without what stands in fences and in signs that are shown as themselves. */
function active(markdown: string): string {
  const lines: string[] = [];
  let fence: string | undefined;
  for (const line of markdown.split("\n")) {
    const [, ticks] = /^(`{3,})/.exec(line) ?? [];
    if (fence === undefined && ticks) fence = ticks;
    else if (fence !== undefined && line === fence) fence = undefined;
    else if (fence === undefined) lines.push(line);
  }
  expect(fence).toBeUndefined();
  return lines.join("\n").replace(/\\[\\`*_{}[\]#|~+.)-]/g, "");
}

const ourPicture = /!\[[^\]\n]*\]\(data:image\/svg\+xml,[\w%.~-]+\)/g;

function expectHarmless(markdown: string): void {
  const left = active(markdown)
    .replace(ourPicture, "")
    .replace(/<\/?small>/g, "");
  expect(left).not.toMatch(/!\[|\]\(|<[a-z/!]|&(?!amp;|lt;|gt;)/i);
  expect(markdown).not.toMatch(obeyed);
}

it("no hover, completion or working holds a picture, a link, a tag or a sign that steers", async () => {
  const seen = { hovers: 0, offers: 0, reports: 0 };
  const run = fc.asyncProperty(hostileText, async (text) => {
    const sample = hostileSchedule(text);
    const { snapshot } = await openSample(sample);
    for (const segment of snapshot.file.document.segments) {
      for (let offset = 0; offset < segment.text.length; offset += 2) {
        const markdown = hover(snapshot, { segment, offset }, { pictures: true })?.markdown;
        if (markdown === undefined) continue;
        seen.hovers++;
        expectHarmless(markdown);
      }
      for (const { documentation } of complete(snapshot, { segment, offset: segment.text.length }, [])) {
        if (!documentation) continue;
        seen.offers++;
        expectHarmless(documentation.text);
      }
    }
    for (const kind of ["working", "summary", "editions"] as const) {
      const report = reportOf(snapshot, kind, undefined);
      if (!("title" in report)) continue;
      seen.reports++;
      expectHarmless(reportMarkdown(report));
    }
  });
  await fc.assert(run, { numRuns: 6, examples: [["![x](https://nowhere.invalid/p.png)"]] });
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(10);
});

it("a title is shown sign by sign", async () => {
  const { snapshot, cursor } = await atCursor(
    'wayfile 1\ninstrument M1 "![x](https://nowhere.in┆valid/p.png)*" {\n}\n',
  );
  expect(hover(snapshot, cursor)?.markdown).toContain('**"!\\[x\\](https://nowhere.invalid/p.png)\\*"** — ');
});

it("broken text that is shown where its name stands cannot leave its frame", async () => {
  const broken = "```\n``` ![x](https://nowhere.invalid)\n  ````";
  const { snapshot, cursor } = await atCursor(`wayfile 1
instrument M1 "Meter" {
  due 2027-01-01
  ${broken}
}
installation "A" {
  supply {
    measured 2026-03-05 with M┆1
  }
}
`);
  const { markdown = "" } = hover(snapshot, cursor) ?? {};
  expect(markdown).toContain("nowhere.invalid");
  expectHarmless(markdown);
});
