/** Text as it may stand in HTML and SVG. */
const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Control signs and halves of signs have no place in HTML, not even as references. */
export const escaped = (text: string): string =>
  text.replace(unfit, "�").replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the very signs that HTML does not allow
const unfit = /[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ufffe\uffff]|\p{Surrogate}/gu;
