/**
 * Addresses of files in one spelling, so that an editor's `file:///c%3A/a.ways` and a folder's `file:///C:/a.ways` are
 * the same file. Written without Node's help: the server also runs where there is none.
 */

const parts = /^([A-Za-z][\w+.-]*:)(\/\/[^/?#]*)?([^?#]*)(.*)$/s;

/** The one spelling of an address. Text that is no address stays as it is. */
export function canonical(uri: string): string {
  const match = parts.exec(uri);
  if (!match) return uri;
  const [, scheme = "", authority = "", path = "", rest = ""] = match;
  return `${scheme.toLowerCase()}${authority}${path.split("/").map(respell).join("/")}${rest}`;
}

function respell(part: string): string {
  const plain = decode(part);
  return /^[A-Za-z]:$/.test(plain) ? plain.toLowerCase() : encodeURIComponent(plain);
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** The address a `use` means, from the address of the file it stands in. Either kind of slash is one. */
export function resolveUri(from: string, use: string): string {
  const match = parts.exec(from);
  if (!match) return use;
  const [, scheme = "", authority = "", path = ""] = match;
  const steps = use.replaceAll("\\", "/").split("/");
  const isDrive = /^[A-Za-z]:$/.test(steps[0] ?? "");
  const isAbsolute = isDrive || steps[0] === "";
  const folder = isAbsolute ? [] : path.split("/").slice(0, -1);
  const whole = isDrive ? ["", ...steps] : [...folder, ...steps];
  const result: string[] = [];
  for (const [index, step] of whole.entries()) {
    if (step === "..") result.splice(Math.max(result.length - 1, 1));
    else if (step !== "." && (step !== "" || index === 0)) {
      result.push(index < folder.length ? step : encodeURIComponent(step));
    }
  }
  return canonical(`${scheme}${authority}${result.join("/")}`);
}

/** What a `use` would say of a file, from the address of the file it stands in; nothing where no path leads there. */
export function relativeUri(from: string, to: string): string | undefined {
  const [, scheme, authority, own = ""] = parts.exec(from) ?? [];
  const [, otherScheme, otherAuthority, other = ""] = parts.exec(to) ?? [];
  if (scheme !== otherScheme || authority !== otherAuthority) return undefined;
  const here = own.split("/").slice(0, -1);
  const there = other.split("/");
  let same = 0;
  while (same < here.length && same < there.length - 1 && here[same] === there[same]) same++;
  return [...here.slice(same).map(() => ".."), ...there.slice(same).map(decode)].join("/");
}

/** The last part of an address, as a person reads it. */
export const nameOfUri = (uri: string): string => decode(uri.slice(uri.lastIndexOf("/") + 1));
