/** Pages of A4 that are filled from top to bottom. The library knows no table that goes on, so pages are made here. */
import PDFDocument from "pdfkit";
import { type FontName, fontFiles } from "./fonts.ts";

/** Points to a millimetre. */
const mm = 72 / 25.4;
const a4 = { short: 210 * mm, long: 297 * mm } as const;

export interface Setting {
  readonly font?: FontName;
  readonly size?: number;
  readonly grey?: boolean;
}

interface Placed extends Setting {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

export class Sheet {
  left = 0;
  width = 0;
  y = 0;
  readonly #doc: PDFKit.PDFDocument;
  #top = 0;
  #bottom = 0;
  readonly #feet: { readonly left: number; readonly width: number; readonly bottom: number }[] = [];
  readonly #chunks: Uint8Array[] = [];
  readonly #widths = new Map<string, number>();
  /** What is drawn at the top of a page that goes on with something, and how high it is. */
  #again: (() => void) | undefined;

  constructor(turned: boolean, title: string, day: string | undefined) {
    // One fixed moment, so that the same schedule gives the same bytes.
    const made = new Date(`${day ?? "2000-01-01"}T00:00:00Z`);
    this.#doc = new PDFDocument({
      autoFirstPage: false,
      margin: 0,
      bufferPages: true,
      lang: "en-GB",
      displayTitle: true,
      font: fontFiles.plain() as unknown as string,
      info: { Title: title, CreationDate: made, ModDate: made },
    });
    for (const name of ["plain", "bold", "slanted"] as const) this.#doc.registerFont(name, fontFiles[name]());
    this.#doc.on("data", (chunk: Uint8Array) => this.#chunks.push(chunk));
    this.turn(turned);
  }

  get room(): number {
    return this.#bottom - this.y;
  }

  /** The height a page offers. */
  get whole(): number {
    return this.#bottom - this.#top;
  }

  /** A new page, turned as the one before unless stated otherwise. */
  turn(turned = this.#turned): void {
    const [width, height] = turned ? [a4.long, a4.short] : [a4.short, a4.long];
    this.#turned = turned;
    this.#doc.addPage({ size: [width, height], margin: 0 });
    // Room for the punch on the side that is bound.
    this.left = (turned ? 12 : 20) * mm;
    this.width = width - this.left - 12 * mm;
    this.#top = (turned ? 15 : 14) * mm;
    this.#bottom = height - 15 * mm;
    this.#feet.push({ left: this.left, width: this.width, bottom: this.#bottom });
    this.y = this.#top;
    this.#again?.();
  }
  #turned = false;

  get isTurned(): boolean {
    return this.#turned;
  }

  /** Begins a page unless so much room is left, or nothing is on this one yet. */
  need(height: number): void {
    if (height > this.room && this.y > this.#top) this.turn();
  }

  /**
   * Rows of these heights, on every new page below `again`. The last goes overleaf with the one before it, and both with
   * what has to stand below them, `tail` high: nobody signs a page on which there is nothing else.
   */
  rows(heights: readonly number[], again: () => void, draw: (at: number) => void, tail = 0): void {
    this.#again = again;
    const pairAt = Math.max(0, heights.length - 2);
    heights.forEach((height, at) => {
      const pair = at === pairAt ? height + (heights[at + 1] ?? 0) + tail : height;
      this.need(pair < this.whole * mostOfPage ? pair : height);
      draw(at);
    });
    this.#again = undefined;
  }

  #set({ font = "plain", size = usualSize, grey = false }: Setting): void {
    this.#doc
      .font(font)
      .fontSize(size)
      .fillColor(grey ? "#444" : "#000");
  }

  /** Measured once for every size: shaping a text costs more than all else of a page. */
  widthOf(text: string, { font = "plain", size = usualSize }: Setting): number {
    const key = `${font} ${text}`;
    let width = this.#widths.get(key);
    if (width === undefined) {
      this.#set({ font, size: 10 });
      width = this.#doc.widthOfString(text) / 10;
      this.#widths.set(key, width);
    }
    return width * size;
  }

  /** The lines a text is broken into at its blanks, and within a word only where it is wider than all there is. */
  linesOf(text: string, width: number, setting: Setting): string[] {
    const lines: string[] = [];
    const blank = this.widthOf("n n", setting) - this.widthOf("nn", setting);
    let [line, used] = ["", 0];
    const words = text.split(" ").flatMap((word) => this.#fitting(word, width, setting));
    for (const word of words) {
      const wide = this.widthOf(word, setting);
      if (line !== "" && used + blank + wide > width + slack) {
        lines.push(line);
        [line, used] = [word, wide];
      } else {
        [line, used] = line === "" ? [word, wide] : [`${line} ${word}`, used + blank + wide];
      }
    }
    return text === "" ? [] : [...lines, line];
  }

  /** A word in pieces that are no wider than there is room: broken behind a hyphen or a stroke where there is one. */
  #fitting(word: string, width: number, setting: Setting): string[] {
    if (this.widthOf(word, setting) <= width + slack) return [word];
    const pieces: string[] = [];
    let piece: string[] = [];
    let used = 0;
    // Sign by sign: to measure each beginning of a long word would cost its square.
    for (const sign of word) {
      const wide = this.widthOf(sign, setting);
      if (piece.length > 0 && used + wide > width + slack) {
        const joint = piece.findLastIndex((one) => one === "-" || one === "/") + 1;
        const end = joint > piece.length / 2 ? joint : piece.length;
        pieces.push(piece.slice(0, end).join(""));
        piece = piece.slice(end);
        used = piece.reduce((sum, one) => sum + this.widthOf(one, setting), 0);
      }
      piece.push(sign);
      used += wide;
    }
    return [...pieces, piece.join("")];
  }

  heightOf(text: string, width: number, setting: Setting): number {
    return this.linesOf(text, width, setting).length * (setting.size ?? usualSize) * lineHeight;
  }

  /** Puts a text at a given place; nothing else moves. */
  put(text: string, placed: Placed): void {
    const lines = this.linesOf(text, placed.width, placed);
    this.#set(placed);
    lines.forEach((line, at) => {
      // The library would break lines, and begin pages, by itself.
      this.#doc.text(line, placed.x, placed.y + at * (placed.size ?? usualSize) * lineHeight, { lineBreak: false });
    });
  }

  /** A paragraph over the whole width, that may go on overleaf. */
  flow(text: string, setting: Setting & { readonly indent?: number; readonly after?: number } = {}): void {
    const { indent = 0, after = 3 } = setting;
    const height = (setting.size ?? usualSize) * lineHeight;
    for (const line of this.linesOf(text, this.width - indent, setting)) {
      this.need(height);
      this.put(line, { ...setting, x: this.left + indent, y: this.y, width: Number.POSITIVE_INFINITY });
      this.y += height;
    }
    this.y += after;
  }

  line(x: number, y: number, width: number, weight = 0.4): void {
    this.#doc
      .moveTo(x, y)
      .lineTo(x + width, y)
      .lineWidth(weight)
      .strokeColor("#000")
      .stroke();
  }

  tint(x: number, y: number, width: number, height: number): void {
    this.#doc.rect(x, y, width, height).fillColor("#ddd").fill();
  }

  frame(x: number, y: number, width: number, height: number): void {
    this.#doc.rect(x, y, width, height).lineWidth(1).strokeColor("#000").stroke();
  }

  /** The bytes, once every page has its foot. */
  async finish(foot: string): Promise<Uint8Array> {
    const { count } = this.#doc.bufferedPageRange();
    for (let page = 0; page < count; page++) {
      this.#doc.switchToPage(page);
      const { left, width, bottom } = this.#feet[page] ?? { left: this.left, width: this.width, bottom: this.#bottom };
      const y = bottom + 4 * mm;
      const number = `page ${page + 1} of ${count}`;
      const size = 7.5;
      this.put(foot, { x: left, y, width: width - 60, size, grey: true });
      this.put(number, { x: left + width - this.widthOf(number, { size }), y, width: 80, size, grey: true });
    }
    const ended = new Promise<void>((resolve) => this.#doc.on("end", resolve));
    this.#doc.end();
    await ended;
    return Buffer.concat(this.#chunks);
  }
}

/** Of what is read, in points, where nothing else is named. */
const usualSize = 9;
/** Two rows that take more of a page than this, with the heading over them, are not held together. */
const mostOfPage = 0.8;
/** Measured and set widths differ in the last digit: without slack a text that fits would wrap. */
const slack = 0.2;
/** Of a line, in sizes of its type. */
const lineHeight = 1.17;
