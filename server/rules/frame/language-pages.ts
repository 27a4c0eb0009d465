import type { LanguageCheck } from "../../model/problems.ts";
import type { Example, Severity } from "./rule.ts";

/** What there is to know of a check of the language: a fault in how a line is written. */
interface LanguagePage {
  readonly title: string;
  readonly why: string;
  readonly severity?: Severity;
  readonly examples: readonly Example[];
}

const notRead = "The line is not read, so nothing is checked by it";

/** The lines of a way round those that matter. */
const way = (lines: string): string => `way 1 radial "Bench sockets" {\n${lines}\n}`;

/** A whole file, where the indentation of the lines round it counts. */
const file = (lines: string): string =>
  `wayfile 1\ninstallation "Boat shed" {\n  board A "Board" {\n    way 1 radial "Bench" {\n${lines}\n    }\n  }\n}\n`;

/** A name that is unknown or defined twice is found by a rule, which has its own page. */
type FoundByRule = "unknown-name" | "duplicate-name";

/** A page for each check of the language, each with its own reason and samples. */
export const languagePages: Readonly<Record<Exclude<LanguageCheck, FoundByRule>, LanguagePage>> &
  Partial<Record<FoundByRule, undefined>> = {
  "unknown-word": {
    title: "A line begins with a word that the language does not have, or not in this block.",
    why: `${notRead}: a misspelt device leaves the circuit without one. The message offers the nearest word, or names the block the word belongs to.`,
    examples: [
      { bad: way("  lenght 12 m\n  ^^^^^^"), good: way("  length       12 m") },
      { bad: way("  Zs 0.41 Ω\n  ^^"), good: way("  live 2026-03-05 {\n    Zs           0.41 Ω\n  }") },
    ],
  },
  "passed-over": {
    title: "A line begins with a word of a later version, and is passed over as the file allows.",
    severity: "information",
    why: "The file was written with a later program, and says by may-ignore that this word is not needed to judge the rest. What it says is not checked here; a later program reads it.",
    examples: [
      {
        bad: "wayfile 1\nmay-ignore thermal-image\nboard A {\n  thermal-image 41 °C\n  ^^^^^^^^^^^^^\n  way 1 spare\n}\n",
        good: "wayfile 1\nmay-ignore thermal-image\nboard A {\n  way 1 spare\n}\n",
      },
    ],
  },
  "former-word": {
    title: "A line begins with a word that has another name now.",
    severity: "information",
    why: "It is read as the present word, and will be for ever. Write the present word, or let wayfile fmt --upgrade do it, so that the next reader finds it in the reference.",
    examples: [],
  },
  "wrong-argument": {
    title: "A word is followed by something it does not take.",
    why: `${notRead}. Either the figure or the choice is misspelt, or it belongs to another word, on a line of its own.`,
    examples: [
      {
        bad: way("  dead 2026-03-04 {\n    polarity fine\n             ^^^^\n  }"),
        good: way("  dead 2026-03-04 {\n    polarity     ok\n  }"),
      },
    ],
  },
  "missing-argument": {
    title: "A word lacks a value that it needs.",
    why: `${notRead}. A test that was not made is written as LIM with its reason, one that does not apply as N/A; a line is never left empty.`,
    examples: [
      {
        bad: way("  live 2026-03-05 {\n    Zs\n    ^^\n  }"),
        good: way('  live 2026-03-05 {\n    Zs           LIM "no access, agreed with the owner"\n  }'),
      },
    ],
  },
  "missing-unit": {
    title: "A figure has no unit.",
    why: "A right figure in the wrong unit is among the commonest mistakes of a schedule: 0.41 may be Ω or kA, 300 may be kΩ or MΩ. The unit is never guessed, and until it is written nothing is checked by the figure.",
    examples: [{ bad: way("  length 12\n         ^^"), good: way("  length       12 m") }],
  },
  "wrong-unit": {
    title: "A figure has a unit that does not belong to it.",
    why: "Either the unit is wrong, or the figure belongs to another word. Which one it is, only the person who took the reading knows, so nothing is checked by it until it is put right.",
    examples: [{ bad: way("  length 12 Ω\n         ^^^^"), good: way("  length       12 m") }],
  },
  "bound-not-read": {
    title: "A > or < is written before a figure that is not read from a meter.",
    why: "The signs mean that a meter was off scale. A size, a length or a rating is known or it is not, and a bound in its place would be calculated with as if it were exact.",
    examples: [{ bad: way("  length >12 m\n         ^^^^^"), good: way("  length       12 m") }],
  },
  "missing-quotes": {
    title: "A text is not between plain double quotes.",
    why: "Without the quotes it cannot be told where the text ends and the next fact begins. Word processors and telephones write curly quotes, which are other characters.",
    examples: [
      {
        bad: way("  note Socket by the door\n       ^^^^^^^^^^^^^^^^^^"),
        good: way('  note         "Socket by the door"'),
      },
    ],
  },
  implausible: {
    title: "A figure is too large or too small to be right.",
    why: "No such value exists in an installation, so the unit or the decimal point is wrong. Calculated with, it would make every result that depends on it wrong.",
    examples: [{ bad: way("  length 120000 m\n         ^^^^^^^^"), good: way("  length       12 m") }],
  },
  "number-slip": {
    title: "A number has a comma, a bare point or a letter O in it.",
    why: "0,41 may be 0.41 or 41, and O.41 may be a slip of the finger or another figure. It is never guessed: write the decimal point, with a digit on both sides.",
    examples: [
      {
        bad: way("  live 2026-03-05 {\n    Zs 0,41 Ω\n       ^^^^^^\n  }"),
        good: way("  live 2026-03-05 {\n    Zs           0.41 Ω\n  }"),
      },
    ],
  },
  "off-scale-sign": {
    title: "Off scale is written as infinity, without the range of the instrument.",
    why: "No meter measures infinity: it was off scale, and what that proves depends on the top of its range. Write > and that figure, such as >999 MΩ.",
    examples: [
      {
        bad: way("  dead 2026-03-04 {\n    insulation 500 V L-E ∞\n                         ^\n  }"),
        good: way("  dead 2026-03-04 {\n    insulation   500 V  L-E >999 MΩ\n  }"),
      },
    ],
  },
  "limitation-without-reason": {
    title: "A limitation has no reason.",
    why: "Whoever relies on the record has to know why a test was not made, and who agreed. Without a reason a limitation cannot be told from a test that was forgotten.",
    examples: [
      {
        bad: way("  live 2026-03-05 {\n    Zs LIM\n       ^^^\n  }"),
        good: way('  live 2026-03-05 {\n    Zs           LIM "no access, agreed with the owner"\n  }'),
      },
    ],
  },
  "not-a-date": {
    title: "A date is in no calendar.",
    why: "Tests are ordered and compared by their dates, and calibration is judged by them. Dates are written year-month-day.",
    examples: [
      {
        bad: way("  live 2026-02-30 {\n       ^^^^^^^^^^\n    Zs 0.41 Ω\n  }"),
        good: way("  live 2026-02-28 {\n    Zs           0.41 Ω\n  }"),
      },
    ],
  },
  repeated: {
    title: "A word that may be written once in its block is written twice.",
    why: "Only one of the two can be right, and the checks cannot tell which: delete the other. A reading taken again goes into a new block of tests with its own date.",
    examples: [{ bad: way("  length 12 m\n  length 14 m\n  ^^^^^^"), good: way("  length       12 m") }],
  },
  "missing-block": {
    title: "A word that opens a block has none.",
    why: "What it opens has its facts between { and }. Without the block it records nothing, and a test without readings would look like one that was made.",
    examples: [
      {
        bad: way("  live 2026-03-05\n  ^^^^^^^^^^^^^^^"),
        good: way("  live 2026-03-05 {\n    Zs           0.41 Ω\n  }"),
      },
    ],
  },
  unclosed: {
    title: "A block is not closed.",
    why: "What follows would belong to the wrong block: a reading to the wrong circuit. Add the } that is missing.",
    examples: [
      {
        bad: 'wayfile 1\ninstrument M1 "Multifunction tester" {\n                                     ^\n  serial "MF-20417"\n',
        good: 'wayfile 1\ninstrument M1 "Multifunction tester" {\n  serial       "MF-20417"\n}\n',
      },
    ],
  },
  unopened: {
    title: "A block has lost its opening brace.",
    why: "The lines below are read as its own, as their indentation shows, but without the { the next person cannot be sure of it. Add the { at the end of the line.",
    examples: [
      {
        bad: file("      live 2026-03-05\n      ^^^^\n        Zs 0.41 Ω\n      }"),
        good: file("      live 2026-03-05 {\n        Zs           0.41 Ω\n      }"),
      },
    ],
  },
  "extra-open": {
    title: "An opening brace opens nothing.",
    why: "Either there is one { too many, or the word before it is not the one that was meant, and then lines belong to the wrong block.",
    examples: [{ bad: file("      length 12 m {\n                  ^"), good: file("      length       12 m") }],
  },
  "extra-close": {
    title: "A closing brace closes nothing.",
    why: "There is one } too many, or the { that it closes was lost above, and then lines belong to the wrong block.",
    examples: [
      {
        bad: 'wayfile 1\ninstrument M1 "Multifunction tester" {\n  serial "MF-20417"\n}\n}\n^',
        good: 'wayfile 1\ninstrument M1 "Multifunction tester" {\n  serial       "MF-20417"\n}\n',
      },
    ],
  },
  "no-word": {
    title: "A line does not begin with a word.",
    why: `${notRead}. Every line begins with the word that names the fact: length 12 m, not 12 m. Remarks begin with #, or go into a note.`,
    examples: [{ bad: way("  12 m\n  ^^^^"), good: way("  length       12 m") }],
  },
  crowded: {
    title: "A statement is on the line of another.",
    why: "One fact a line makes one reading one line of a comparison, and a part that begins on the line of another would not be found.",
    examples: [
      {
        bad: way("  live 2026-03-05 { Zs 0.41 Ω } length 12 m\n                                ^^^^^^"),
        good: way("  length       12 m\n  live 2026-03-05 { Zs 0.41 Ω }"),
      },
    ],
  },
  conflict: {
    title: "A merge conflict is left in the file.",
    why: "Both versions of the same lines are there, and only one of them is what was read on site. Keep one and delete the marks; until then what is between them cannot be trusted.",
    examples: [
      {
        bad: way("<<<<<<< mine\n^^^^^^^^^^^^\n  length 12 m\n=======\n  length 14 m\n>>>>>>> theirs"),
        good: way("  length       14 m"),
      },
    ],
  },
  stray: {
    title: "A character has no meaning here.",
    why: `${notRead}. The only signs of the language are quotes, braces and #, and those of numbers and units.`,
    examples: [{ bad: way("  length 12 m ;\n              ^"), good: way("  length       12 m") }],
  },
  "open-text": {
    title: "A text has no closing quote.",
    why: "Without it the rest of the line is taken as text, with any figure in it. A text stays on its line.",
    examples: [
      {
        bad: way('  note "Socket by the door\n       ^^^^^^^^^^^^^^^^^^^'),
        good: way('  note         "Socket by the door"'),
      },
    ],
  },
  "no-version": {
    title: "The version of the language is not stated.",
    severity: "warning",
    why: "The file is read as version 1. Stated in the first line, the version keeps the file readable with the same meaning when a later version gives a word another one.",
    examples: [
      {
        bad: 'instrument M1 "Multifunction tester" {\n^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n  serial "MF-20417"\n}\n',
        good: 'wayfile 1\ninstrument M1 "Multifunction tester" {\n  serial       "MF-20417"\n}\n',
      },
    ],
  },
  "newer-version": {
    title: "The file is in a later version of the language than this program knows.",
    why: "A word may have another meaning there, so nothing is judged rather than judged wrongly. A newer version of the program reads it.",
    examples: [{ bad: "wayfile 2\n        ^", good: "wayfile 1" }],
  },
  "use-missing": {
    title: "A file that is used cannot be read.",
    why: "Boards, instruments and cable types that it defines are missing, so what depends on them is not judged. Correct the path, which is relative to this file, or restore the file.",
    examples: [{ bad: 'wayfile 1\nuse "workshop.ways"\n    ^^^^^^^^^^^^^^^', good: "wayfile 1" }],
  },
  "use-cycle": {
    title: "Circular use: a file uses itself, directly or through others.",
    why: "Each file is read once, so the second use adds nothing, but it shows that the files are not divided as intended. Remove one of the uses.",
    examples: [{ bad: 'wayfile 1\nuse "sample.ways"\n    ^^^^^^^^^^^^^', good: "wayfile 1" }],
  },
};
