/** Holds a text against the few rules of HTML that our renderer keeps: every element is closed, every sign escaped. */
const empty = new Set(["meta", "!doctype"]);
const entity = /^&(?:amp|lt|gt|quot|#39);/;

export function wellFormed(html: string): void {
  const open: string[] = [];
  const style = /<style>[^<]*<\/style>/;
  const text = html.replace(style, "");
  for (let at = 0; at < text.length; at++) {
    if (text[at] === "&" && !entity.test(text.slice(at, at + 8)))
      throw new Error(`A bare & at ${text.slice(at, at + 40)}`);
    if (text[at] === ">") throw new Error(`A bare > at ${text.slice(Math.max(0, at - 40), at)}`);
    if (text[at] !== "<") continue;
    const tag = /^<(\/?)([a-zA-Z!][\w]*)((?:\s+[a-zA-Z-]+(?:="[^"<>]*")?)*)>/.exec(text.slice(at));
    if (!tag) throw new Error(`No tag at ${text.slice(at, at + 40)}`);
    const [whole, slash, name = ""] = tag;
    if (slash && open.pop() !== name) throw new Error(`</${name}> closes something else`);
    if (!slash && !empty.has(name.toLowerCase())) open.push(name);
    at += whole.length - 1;
  }
  if (open.length > 0) throw new Error(`${open.join(", ")} left open`);
}
