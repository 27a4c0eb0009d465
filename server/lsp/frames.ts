/**
 * Watches the frames of a conversation as their bytes come in. The reader takes any number for a length: one below zero
 * leads it astray, and behind one that no message has it waits for ever.
 */

/** A document of 8 MB is read, and what is larger is reported; written as JSON it can be six times as long. */
const longest = 128 * 2 ** 20;
const longestHeader = 4096;

export class FrameWatch {
  #header = "";
  /** Bytes of the message's body that are still to come. */
  #left = 0;

  /** Takes what came. Says why nothing behind it can be read, if so. */
  take(bytes: Uint8Array): string | undefined {
    let at = 0;
    while (at < bytes.length) {
      const body = Math.min(this.#left, bytes.length - at);
      this.#left -= body;
      at += body;
      if (at === bytes.length) return undefined;
      const end = this.#endOfHeader(bytes, at);
      if (end === undefined) return this.#header.length > longestHeader ? "Its header has no end" : undefined;
      at = end;
      const length = /^content-length:[ \t]*(.*?)[ \t]*$/im.exec(this.#header)?.[1];
      this.#header = "";
      // What has no length, or a word for one, the reader itself refuses.
      if (length === undefined || Number.isNaN(Number(length))) return undefined;
      if (!/^\d+$/.test(length)) return `Its length of ${length} bytes is no length`;
      this.#left = Number(length);
      if (this.#left > longest) return `Its length of ${length} bytes is more than any message has`;
    }
    return undefined;
  }

  /** Where the body begins, once the header is whole. */
  #endOfHeader(bytes: Uint8Array, from: number): number | undefined {
    for (let at = from; at < bytes.length; at++) {
      this.#header += String.fromCharCode(bytes[at] ?? 0);
      if (this.#header.endsWith("\r\n\r\n")) return at + 1;
      if (this.#header.length > longestHeader) return undefined;
    }
    return undefined;
  }
}
