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
