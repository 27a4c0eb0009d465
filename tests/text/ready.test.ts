/** What is put into a text that leaves is escaped, once; what is ready stands as it is. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { element, html } from "../../server/text/html.ts";
import { fenced, md, picture, prose, withoutMarks } from "../../server/text/markdown.ts";
import { lines, term } from "../../server/text/terminal.ts";

describe("a terminal", () => {
  it("is shown what would steer it, and no line that is not ours", () => {
    expect(term`a ${"\u001b[31m\n\u202e\u009b"} b`.text).toBe("a ␛[31m␊�� b");
    expect(lines("a\n\u001bb").text).toBe("a\n␛b");
    expect(term`${term`${"\n"}`}`.text).toBe("␊");
  });
});

describe("HTML", () => {
  it("holds text as text, in elements and their attributes", () => {
    expect(element("p", { title: '"><script>' }, "<b>", html`<i>${"&"}</i>`).text).toBe(
      '<p title="&quot;&gt;&lt;script&gt;">&lt;b&gt;<i>&amp;</i></p>',
    );
  });

  it("escapes a text that was ready and became a string again", () => {
    expect(html`${`${html`<i>`}`}`.text).toBe("&lt;i&gt;");
  });
});

describe("Markdown", () => {
  it("holds text as text", () => {
    expect(md`**${"*a* [b](c) `d`"}**`.text).toBe("**\\*a\\* \\[b\\](c) \\`d\\`**");
    expect(md`${"1. one"} ${"- two"} ${"12 mm"} ${"1.5 mm"}`.text).toBe("1\\. one \\- two 12 mm 1.5 mm");
  });

  it("shows words of the language as such, and nothing else that stands between backticks", () => {
    expect(prose("write `declared`, not *this* or `a\nb`").text).toBe("write `declared`, not \\*this\\* or \\`a b\\`");
  });

  it("takes a picture that is part of the text, and fetches none", () => {
    expect(picture("a]", "data:image/svg+xml,%3Csvg%3E").text).toBe("![a\\]](data:image/svg+xml,%3Csvg%3E)");
    expect(picture("a", "https://nowhere.invalid/p.png").text).toBe("a");
  });

  it("keeps lines within their fence, whatever they hold", () => {
    const line = fc.array(fc.constantFrom("`", "```", "\n", "a", "~~~", "\r\n")).map((all) => all.join(""));
    fc.assert(
      fc.property(line, (text) => {
        const written = fenced("text", text).text.split("\n");
        const fence = written.at(-1) ?? "";
        expect(fence).toMatch(/^`{3,}$/);
        expect(written[0]).toBe(`${fence}text`);
        expect(written.slice(1, -1).some((one) => one.includes(fence))).toBe(false);
      }),
    );
  });

  it("is the text itself again for an editor that shows none", () => {
    const text = "a [b] *c* <d> & `e` #1 | ~";
    expect(withoutMarks(md`**${text}**\n\n${fenced("text", "x = 1")}`.text)).toBe(`${text}\n\nx = 1\n`);
  });
});
