/** Names as people write them, in the three settings. */
import { expect, test } from "vitest";
import { reportHtml } from "../../server/reports/setting/html.ts";
import { reportMarkdown } from "../../server/reports/setting/markdown.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { wrap } from "../../server/reports/setting/wrap.ts";
import { missing, workingIn } from "./samples.ts";
import { wellFormed } from "./well-formed.ts";

const named = (title: string) => workingIn(missing.replace('"Unknown"', `"${title}"`), { way: "A/1" });

test("a name with signs of HTML is shown as it is written", () => {
  const html = reportHtml(named("<b>Saws</b> & 'lathes' <script>alert(1)</script>"));
  wellFormed(html);
  expect(html).not.toContain("<script");
  expect(html).toContain("“&lt;b&gt;Saws&lt;/b&gt; &amp; &#39;lathes&#39; &lt;script&gt;alert(1)&lt;/script&gt;”");
});

test("a well-formedness that sees nothing would be no test", () => {
  expect(() => wellFormed("<p>a & b</p>")).toThrow("bare &");
  expect(() => wellFormed("<p><b></p></b>")).toThrow("closes something else");
  expect(() => wellFormed("<p>")).toThrow("left open");
});

test("HTML needs nothing from elsewhere and can be printed", () => {
  const html = reportHtml(named("Saws"));
  expect(html).not.toMatch(/\b(?:src|href)=|url\(|@import|https?:/);
  expect(html).toContain("@media print");
  // Before anything that could load, and nothing but the style that stands in the page itself.
  expect(html.indexOf("Content-Security-Policy")).toBeLessThan(html.indexOf("<title>"));
  expect(html).toContain("default-src 'none'; style-src 'unsafe-inline'; img-src data:;");
});

test("a name with signs of Markdown is no heading, link, picture or table", () => {
  const markdown = reportMarkdown(named("![x](http://nowhere) | **saws** `a` # <i>b</i>"));
  expect(markdown).toContain("!\\[x\\](http://nowhere) \\| \\*\\*saws\\*\\* \\`a\\` \\# &lt;i&gt;b&lt;/i&gt;");
  const rows = markdown.split("\n").filter((line) => line.startsWith("| "));
  for (const row of rows) expect(row.replace(/\\\|/g, "").split("|").length).toBeLessThanOrEqual(5);
});

test("a fence within the working cannot close it", () => {
  const markdown = reportMarkdown(named("``` saws"));
  expect(markdown).toContain("\\`\\`\\` saws");
});

test("a figure is not torn from its unit, and a long word is cut", () => {
  expect(wrap("the drop comes to 4.55 % of it", 19)).toEqual(["the drop comes to", "4.55 % of it"]);
  expect(wrap("abcdefgh ij", 4)).toEqual(["abcd", "efgh", "ij"]);
  expect(wrap("", 4)).toEqual([""]);
});

test("no line of the text is wider than the page", () => {
  const text = reportText(named("A title that goes on and on, ".repeat(12).trim()));
  for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
});
