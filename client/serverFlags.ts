/**
 * What V8 is given for the server's process. The room for what is new grows to 16 MiB three times over where nothing is
 * stated; a server is at rest most of the time and never gives it back. With half of it a check costs as much, and ten
 * thousand ways stay a hundred MiB smaller.
 */
export const serverFlags: readonly string[] = ["--max-semi-space-size=8"];
