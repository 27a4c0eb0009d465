/** Text for HTML and SVG. */
import { type Ready, writerOf } from "./ready.ts";
import { steering } from "./visible.ts";

export type Html = Ready<"html">;

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Halves of signs have no place in HTML, not even as references. */
const unfit = /[\ufffe\uffff]|\p{Surrogate}/gu;

/** Control signs are not allowed in HTML, and those that turn the direction would turn what stands round them. */
export const html = writerOf("html", (text) =>
  text
    .replace(steering, "�")
    .replace(unfit, "�")
    .replace(/[&<>"']/g, (sign) => entities[sign] ?? sign),
);

/** An element of HTML or SVG. Its name and those of its attributes are ours; what they hold is escaped. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string>>,
  ...content: readonly (string | Html)[]
): Html {
  const tag = html.asItStands(name);
  const pairs = Object.entries(attributes).map(([key, value]) => html` ${html.asItStands(key)}="${value}"`);
  return html`<${tag}${html.join(pairs)}>${html.join(content)}</${tag}>`;
}
