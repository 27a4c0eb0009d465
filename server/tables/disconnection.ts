import { memory, quoted, table } from "./table.ts";

/** Greatest disconnection time of a final circuit. */
interface DisconnectionTime {
  /** TN or TT. */
  readonly system: "TN" | "TT";
  /** U0 above this, V. */
  readonly over: number;
  /** U0 up to this; null without end, V. */
  readonly upTo: number | null;
  /** A.c. limit, s. */
  readonly ac: number;
  /** D.c. limit; null where none is required for shock, s. */
  readonly dc: number | null;
}

export const disconnectionTimes = table<DisconnectionTime>({
  id: "disc-41.1",
  title: "Maximum disconnection times, a.c.",
  ref: "BS 7671:2018+A2:2022, Table 41.1",
  edition: "Table numbers as BS 7671:2008; scope extended in the 18th Edition",
  applies:
    "Final circuits covered by 411.3.2.2. TT may use the TN times if an overcurrent device disconnects and all extraneous-conductive-parts are bonded.",
  units: { system: "", over: "V", upTo: "V", ac: "s", dc: "s" },
  standing: "quoted",
  rows: () => [
    { system: "TN", over: 50, upTo: 120, ac: 0.8, dc: null },
    quoted(
      { system: "TN", over: 120, upTo: 230, ac: 0.4, dc: 5 },
      {},
      "The page gives 5 s for d.c.; the current printing may show 1 s.",
    ),
    { system: "TN", over: 230, upTo: 400, ac: 0.2, dc: 0.4 },
    { system: "TN", over: 400, upTo: null, ac: 0.1, dc: 0.1 },
    { system: "TT", over: 50, upTo: 120, ac: 0.3, dc: null },
    { system: "TT", over: 120, upTo: 230, ac: 0.2, dc: 0.4 },
    { system: "TT", over: 230, upTo: 400, ac: 0.07, dc: 0.2 },
    { system: "TT", over: 400, upTo: null, ac: 0.04, dc: 0.1 },
  ],
  // Quoted on these pages:
  // - Personal reference page 'Table 41.1 Maximum disconnection times' (talktalk.net host), BS 7671:2008 values
  // - Study notes: domestic installation safety (disconnection times)
  quotedOn: 2,
});

/** Which circuit needs which time at 230 V. */
interface DisconnectionScope {
  /** Short name for look-up. */
  readonly key: string;
  /** Circuit class. */
  readonly circuit: string;
  /** Limit on TN, s. */
  readonly tn: number | null;
  /** Limit on TT, s. */
  readonly tt: number | null;
  /** Regulation. */
  readonly clause: string;
}

export const disconnectionScope = table<DisconnectionScope>({
  id: "disc-scope",
  title: "Which circuits need which time",
  ref: "BS 7671:2018+A2:2022, 411.3.2",
  edition: "63 A socket scope is new in BS 7671:2018; the 17th Edition used 32 A for all final circuits",
  applies: "Automatic disconnection, U0 = 230 V.",
  units: { key: "", circuit: "", tn: "s", tt: "s", clause: "" },
  standing: "quoted",
  // A time that is from memory is the rule's, and not a figure that could be a little off.
  share: 0,
  rows: () => [
    {
      key: "final-sockets",
      circuit: "Final circuit ≤ 63 A with one or more socket-outlets",
      tn: 0.4,
      tt: 0.2,
      clause: "411.3.2.2",
    },
    {
      key: "final-fixed",
      circuit: "Final circuit ≤ 32 A supplying only fixed connected equipment",
      tn: 0.4,
      tt: 0.2,
      clause: "411.3.2.2",
    },
    {
      key: "distribution-tn",
      circuit: "Distribution circuit, and any final circuit not in 411.3.2.2 (TN)",
      tn: 5,
      tt: null,
      clause: "411.3.2.3",
    },
    {
      key: "distribution-tt",
      circuit: "Distribution circuit, and any final circuit not in 411.3.2.2 (TT)",
      tn: null,
      tt: 1,
      clause: "411.3.2.4",
    },
    memory({
      key: "reduced-low",
      circuit: "Every circuit at reduced low voltage, sockets included",
      tn: 5,
      tt: 5,
      clause: "411.8.3",
    }),
    {
      key: "tt-overcurrent",
      circuit: "TT with overcurrent disconnection and full bonding: TN times allowed",
      tn: null,
      tt: 0.4,
      clause: "Table 41.1 note",
    },
  ],
  notes: ["The 17th Edition used 32 A for every final circuit; the two-part rule of 63 A and 32 A is new in the 18th."],
  // Quoted on these pages:
  // - NICEIC: 18th Edition, changes to Part 4 (411.3.2.2, 411.3.3, 411.3.4)
  // - IET EngX: On-Site Guide disconnection times (411.3.2.2)
  // - IET EngX: 411.3.2.2 wording
  // - Study notes: domestic installation safety (disconnection times)
  // - Electricians Blog: TT disconnection times
  // - Personal reference page 'Table 41.1 Maximum disconnection times' (talktalk.net host), BS 7671:2008 values
  quotedOn: 6,
});
