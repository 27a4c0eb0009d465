/**
 * Addresses of files in one spelling, so that an editor's `file:///c%3A/a.ways` and a folder's `file:///C:/a.ways` are
 * the same file.
 */
import { URI, Utils } from "vscode-uri";

/** Nothing for text that is no address. Half of a sign, which no address can spell, is the sign for what is unknown. */
function parse(uri: string): URI | undefined {
  if (!/^[A-Za-z][\w+.-]*:/.test(uri)) return undefined;
  try {
    return URI.parse(uri.toWellFormed());
  } catch {
    return undefined;
  }
}

/** The one spelling of an address. Text that is no address stays as it is. */
export const canonical = (uri: string): string => parse(uri)?.toString() ?? uri;

/** The address a `use` means, from the address of the file it stands in. Either kind of slash is one. */
export function resolveUri(from: string, use: string): string {
  const uri = parse(from);
  if (!uri) return use;
  const path = use.toWellFormed().replaceAll("\\", "/");
  const isDrive = /^[A-Za-z]:\//.test(path);
  return Utils.resolvePath(Utils.dirname(uri), isDrive ? `/${path}` : path).toString();
}

/**
 * The file and its revision, of an address that an editor gives to what a file was: it says so in its query, which also
 * stands in the addresses of all that such a schedule uses. An empty revision is what is staged.
 */
export function pastOf(uri: string): { readonly uri: string; readonly revision: string } | undefined {
  // Nearly every address is of a file as it is: it is recognised without taking thousands of them apart at each key.
  const parsed = uri.startsWith("file:") ? undefined : parse(uri);
  const revision = parsed && parsed.scheme !== "file" ? revisionIn(parsed.query) : undefined;
  if (!parsed || revision === undefined) return undefined;
  return { uri: parsed.with({ scheme: "file", query: "", fragment: "" }).toString(), revision };
}

function revisionIn(query: string): string | undefined {
  try {
    const { revision, ref }: Record<string, unknown> = JSON.parse(query) ?? {};
    if (typeof revision === "string") return revision;
    // The editor's own for git: a tilde is what is staged, too.
    return typeof ref === "string" ? ref.replace(/^~$/, "") : undefined;
  } catch {
    return undefined;
  }
}

/** What a `use` would say of a file, from the address of the file it stands in; nothing where no path leads there. */
export function relativeUri(from: string, to: string): string | undefined {
  const [own, other] = [parse(from), parse(to)];
  if (own?.scheme !== other?.scheme || own?.authority !== other?.authority) return undefined;
  const here = (own?.path ?? "").split("/").slice(0, -1);
  const there = (other?.path ?? "").split("/");
  let same = 0;
  while (same < here.length && same < there.length - 1 && here[same] === there[same]) same++;
  return [...here.slice(same).map(() => ".."), ...there.slice(same)].join("/");
}

/** The last part of an address, or of a path, as a person reads it. */
export function nameOfUri(uri: string): string {
  const path = parse(uri)?.path ?? uri;
  return path.slice(path.lastIndexOf("/") + 1);
}
