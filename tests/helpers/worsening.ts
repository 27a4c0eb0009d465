/**
 * A quantity of a schedule and what is worse than it stands there: the loop higher, the cable thinner, the device larger.
 * Each is written down here by what the trade knows of it, not by what any check does with it.
 */

interface Quantity {
  readonly name: string;
  /** What stands before the figure, the figure, and what stands behind it. */
  readonly find: RegExp;
  /** From what is written to ever worse, mildest first. */
  readonly worse: (written: string) => readonly string[];
}

interface Worsening {
  readonly quantity: string;
  /** Counted from nought. */
  readonly line: number;
  /** That line, ever worse. */
  readonly written: readonly string[];
}

const shares = [1.05, 1.2, 1.5, 2, 3, 5, 10, 30];
const decimals = (written: string): number => written.split(".")[1]?.length ?? 0;

const scaled =
  (by: (value: number, share: number) => number, digits: number) =>
  (written: string): string[] =>
    shares.map((share) => by(Number(written), share).toFixed(Math.max(digits, decimals(written))));

const higher = (digits: number) => scaled((value, share) => value * share, digits);
const lower = (digits: number) => scaled((value, share) => value / share, digits);

const above = (ladder: readonly number[]) => (written: string) =>
  ladder.filter((one) => one > Number(written)).map(String);
const below = (ladder: readonly number[]) => (written: string) =>
  ladder
    .filter((one) => one < Number(written))
    .reverse()
    .map(String);
const after = (ladder: readonly string[]) => (written: string) =>
  ladder.includes(written) ? ladder.slice(ladder.indexOf(written) + 1) : [];

const sizes = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120];
const ratings = [6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200];
const breaking = [1, 1.5, 3, 4.5, 6, 10, 16, 25];
const residual = [10, 30, 100, 300, 500];

const quantities: readonly Quantity[] = [
  { name: "Zs", find: /^(\s+Zs\s+)([\d.]+)( Ω)/, worse: higher(2) },
  { name: "R1+R2", find: /^(\s+R1\+R2\s+)([\d.]+)( Ω)/, worse: higher(2) },
  { name: "R2", find: /^(\s+R2\s+)([\d.]+)( Ω)/, worse: higher(2) },
  { name: "r1", find: /(\br1 )([\d.]+)( Ω)/, worse: higher(2) },
  { name: "rn", find: /(\brn )([\d.]+)( Ω)/, worse: higher(2) },
  { name: "r2", find: /(\br2 )([\d.]+)( Ω)/, worse: higher(2) },
  { name: "Ze", find: /^(\s+Ze\s+)([\d.]+)( Ω)/, worse: higher(2) },
  { name: "Zdb", find: /^(\s+Zdb\s+)([\d.]+)( Ω)/, worse: higher(2) },
  { name: "electrode", find: /^(\s+electrode .*?)([\d.]+)( Ω)/, worse: higher(1) },
  { name: "insulation to earth", find: /(L-E )([\d.]+)( MΩ)/, worse: lower(2) },
  { name: "insulation between lives", find: /(L-N )([\d.]+)( MΩ)/, worse: lower(2) },
  { name: "trip time", find: /( 1x )(\d+)( ms)/, worse: higher(0) },
  { name: "residual current", find: /^(\s+(?:device|rcd) .*?)(\d+)( mA)/, worse: above(residual) },
  { name: "type of RCD", find: /(\btype )(B|F|A)()\b/, worse: after(["B", "F", "A", "AC"]) },
  { name: "length", find: /^(\s+length\s+)([\d.]+)( m)/, worse: higher(0) },
  { name: "breaker", find: /^(\s+device .*\b[BCD])(\d+)()/, worse: above(ratings) },
  { name: "type of breaker", find: /^(\s+device .*)\b([BC])(\d+)/, worse: after(["B", "C", "D"]) },
  { name: "fuse", find: /^(\s+device\s+BS (?:3036|88-\d|1361) )(\d+)( A)/, worse: above(ratings) },
  { name: "breaking capacity", find: /^(\s+device .*?)([\d.]+)( kA)/, worse: below(breaking) },
  { name: "line conductor", find: /(\bline )([\d.]+)( mm²)/, worse: below(sizes) },
  { name: "protective conductor", find: /(\bcpc )([\d.]+)( mm²)/, worse: below(sizes) },
  { name: "method", find: /(\bmethod )([A-E])()\b/, worse: after(["E", "C", "B", "A"]) },
  { name: "method of flat cable", find: /(\bmethod )(\d+)()\b/, worse: after(["100", "101", "103"]) },
  { name: "grouping", find: /(\bgrouped )(\d+)()/, worse: above([3, 4, 6, 9, 12]) },
  { name: "current", find: /^(\s+Ib\s+)([\d.]+)( A)/, worse: higher(1) },
  { name: "load", find: /^(\s+load\s+)([\d.]+)( k?W| A)/, worse: higher(1) },
  { name: "fault current", find: /^(\s+(?:Ipf|PSCC|PEFC)\s+)([\d.]+)( kA)/, worse: higher(2) },
  { name: "earthing conductor", find: /(earthing-conductor )([\d.]+)( mm²)/, worse: below(sizes) },
  { name: "bonding", find: /(bonding\s+\S+ )([\d.]+)( mm²)/, worse: below(sizes) },
  { name: "tails", find: /(tails\s+)([\d.]+)( mm²)/, worse: below(sizes) },
  { name: "cut-out", find: /(cutout .*?)(\d+)( A)/, worse: above(ratings) },
  { name: "main switch", find: /(main-switch .*? )(\d+)( A)/, worse: below(ratings) },
  { name: "current to earth", find: /(leakage\s+)([\d.]+)( mA)/, worse: higher(1) },
];

/** Every quantity of a text that can be worse. */
export const worsenings = (text: string): readonly Worsening[] =>
  text.split("\n").flatMap((line, index) =>
    quantities.flatMap(({ name, find, worse }): Worsening[] => {
      const [all, before = "", figure = "", behind = ""] = find.exec(line) ?? [];
      if (all === undefined) return [];
      const written = worse(figure).map((one) => line.replace(all, () => before + one + behind));
      return written.length > 0 ? [{ quantity: name, line: index, written }] : [];
    }),
  );
