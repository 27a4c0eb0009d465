/** The path a `use` means, from that of the file it stands in. Either kind of slash is one. */
export function resolvePath(from: string, use: string): string {
  const path = use.replaceAll("\\", "/");
  const parts = path.startsWith("/") ? [] : from.split("/").slice(0, -1);
  const isAbsolute = path.startsWith("/") || from.startsWith("/");
  for (const part of path.split("/")) {
    if (part === ".." && parts.length > 0 && parts.at(-1) !== "..") parts.pop();
    else if (part !== "." && part !== "") parts.push(part);
  }
  const joined = parts.filter((part) => part !== "").join("/");
  return isAbsolute ? `/${joined}` : joined;
}
