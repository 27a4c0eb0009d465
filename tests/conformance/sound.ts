/** What is right, and easily read wrongly. */
import type { BlockKind } from "../../grammar/vocabulary.ts";

type Lines = Readonly<Record<string, readonly [BlockKind, string]>>;

const lines: Lines = {
  "blanks of any width": ["way", "\t Ib\u00a0\u20032.1\u3000A  "],
  "no blank before a unit": ["way", "Ib 2.1A"],
  "a unit in another spelling": ["dead", "R1+R2 0.41 ohm"],
  "the ohm sign of U+2126": ["dead", "R1+R2 0.41 \u2126"],
  "a size written mm2": ["way", "cable flat-twin line 2.5mm2 cpc 1.5mm2"],
  "a comment behind a statement": ["way", "Ib 2.1 A# at rest"],
  "a brace in a comment": ["way", "Ib 2.1 A # {"],
  "a brace in a text": ["way", 'note "a { b"'],
  "a quote in a text": ["way", 'note "Sign \\"Pumps\\""'],
  "a backslash in a text": ["way", 'note "Drawing M\\7"'],
  "two backslashes in a text": ["way", 'note "C:\\\\plans"'],
  "an empty text": ["way", 'note ""'],
  "arguments in another order": ["way", "device 6 kA B32 BS EN 60898"],
  "a standard without blanks": ["installation", "standard BS7671:2018+A2:2022"],
  "a standard with blanks round its plus": ["installation", "standard BS 7671:2018 + A2:2022"],
  "a standard that is older": ["way", "device BS 3871 30 A type-2 3 kA"],
  "a multiple with a letter": ["live", "rcd 30 mA 5x 12 ms"],
  "a multiple with its sign": ["live", "rcd 30 mA 1\u00d7 24 ms"],
  "half the rated current": ["live", "rcd 30 mA \u00bdx no-trip"],
  "off scale": ["dead", "insulation 500 V L-N >999 MΩ L-E > 999 MΩ N-E >999 MΩ"],
  "below what a meter shows": ["dead", "R1+R2 <0.01 Ω"],
  "a reading below nothing": ["dead", "R1+R2 -0.02 Ω"],
  "a limitation for the one reading": ["live", 'Zs LIM "No access"'],
  "a limitation behind its label": ["dead", 'insulation 500 V L-N LIM "Drivers" L-E 280 MΩ'],
  "a limitation for all that are not written": ["dead", 'ends LIM "No access"'],
  "not applicable without a reason": ["live", "Zs N/A"],
  "not applicable with a reason": ["live", 'Zs N/A "RCD alone"'],
  "the result of an inspection, limited": ["dead", 'polarity LIM "No access"'],
  declared: ["supply", "Ze 0.35 Ω declared"],
  "from a record": ["live", 'Zs 0.41 Ω from-record "2019 report"'],
  "measured, said": ["live", "Zs 0.41 Ω measured"],
  "several values of one label": ["way", "place bathroom zone 1 2 outside distance 3 m"],
  "several choices": ["way", "serves sockets lighting cooker"],
  "a run": ["way", "run A 7 m S1 6 m S2 9 m A"],
  "a run with points that are numbers": ["way", "run A 7 m 1 6 m 2a"],
  "a clause in a departure": ["way", 'departure 411.3.3 "Agreed"'],
  "a check in a departure": ["way", 'departure loop/zs-over-limit "Agreed"'],
  "an RCD called by a number": [
    "board",
    "rcd 1 BS EN 61008 63 A 30 mA type A\nlive 2026-03-05 {\nrcd 1 30 mA 1x 24 ms\ntest-button 1 ok\n}",
  ],
  "a name of Greek letters": ["board", "way Δ1 spare"],
  "a name of Cyrillic letters": ["board", "way Щ1 spare"],
  "a name with a mark apart": ["board", "way Cafe\u0301 spare"],
  "a name that begins with a digit": ["board", "way 2/L1 radial"],
  "a number and a letter of another script": ["board", "way 7é radial"],
  "a block on one line": ["board", "way 8 feeder { feeds B }"],
  "a way without a block": ["board", "way 9 spare"],
  "a run of spare ways": ["board", "way 10..12 spare"],
  "a run of spare ways by lines": ["board", "way 8L2..9L1 spare"],
  "a circuit type that nothing here defines": ["board", 'way 1L2 as lights "Corridor"'],
  "every pair of conductors": ["dead", "insulation 500 V each >999 MΩ"],
  "every pair but one": ["dead", "insulation 500 V L-E 4 MΩ each >999 MΩ"],
  "polarity beside R1+R2": ["dead", "R1+R2 0.41 Ω polarity ok"],
  "the button beside the time": ["live", "rcd 30 mA 1x 24 ms test-button ok"],
  "a correction": ["live", 'Zs 0.62 Ω was 0.26 Ω "Figures turned round"'],
  "a result that is corrected": ["dead", 'polarity ok was wrong "Read at way 2"'],
  "tests struck out": ["way", 'dead 2026-03-04 {\nstruck-out by "R.M." "Read on way 6"\nR1+R2 0.41 Ω\n}'],
  "a year": ["board", 'installed by "unknown" 1985'],
  "a month": ["board", 'installed by "unknown" 1985-06'],
  "about a year": ["board", 'installed by "unknown" about 1985'],
  "before a year": ["board", 'installed by "unknown" before 2001'],
  "a former number": ["way", 'formerly 5 "Oven" 2026-02-27'],
  "details of one's own": ["way", 'detail asset "W-17"\ndetail photo "img/17.jpg"'],
  "a field": ["installation", 'field colour in way board required kind text one-of "red" "blue"'],
  "several ways of a board": ["inspection", 'sampled-out board A way 4 5 6 "Alike to way 3"'],
  "items in a run and alone": ["inspection", "inspected 4.1..4.6 4.13 ok"],
  "an item by its title": ["inspection", 'inspected "Earthing conductor" not-verified'],
  "an item that could not be seen": ["inspection", 'inspected 5.3 LIM "Behind panelling"'],
  "an observation put right": [
    "inspection",
    'observation 2 C1 "Live parts in reach" board A way 1 2 at S1 item 4.5 photo "2a.jpg" "2b.jpg" remedied 2026-03-05 by "R.M."',
  ],
  "an inspection of several days": ["installation", "inspection initial 2026-03-03 to 2026-03-05 {\n}"],
  "tests by another": ["way", 'dead 2026-03-04 by "T.O." with M1 {\n}'],
  "the same word in two blocks": ["way", "dead 2026-03-04 {\npolarity ok\n}\nlive 2026-03-05 {\npolarity ok\n}"],
};

const files: Readonly<Record<string, string>> = {
  "nothing at all": "",
  "blank lines": "\n \n\t\n",
  "a comment alone": "# nothing yet\n",
  "the version behind a comment": "# a comment\n\nwayfile 1\n",
  "a byte order mark": "\ufeffwayfile 1\nboard A {\n}\n",
  "line ends of both signs": "wayfile 1\r\nboard A {\r\n  way 1 spare\r\n}\r\n",
  "line ends of returns": "wayfile 1\rboard A {\r  way 1 spare\r}\r",
  "no line end at the end": "wayfile 1\nboard A {\n}",
  "a board without an installation": "wayfile 1\nboard A {\n  way 1 spare\n}\n",
  "a board on one line": 'wayfile 1\ninstallation "S" {\n  board A { fed-from supply }\n}\n',
  "two installations": 'wayfile 1\ninstallation "S" {\n}\ninstallation "T" {\n}\n',
  "a word of a later version that may be passed over":
    'wayfile 1\nmay-ignore thermal-image\nboard A {\n  thermal-image 41 °C {\n    hot-spot "Way 3"\n  }\n  way 1 spare\n}\n',
  "names that are defined": `wayfile 1
instrument M1 "Tester"
cable-type twin flat-twin line 2.5 mm² cpc 1.5 mm²
circuit-type sockets radial {
  cable  twin
}
installation "S" {
  board A {
    fed-from  supply
    rcd east  BS EN 61008 63 A 30 mA type A
    way 1 as sockets "Hall" {
      behind  east
      run     A 7 m S1
      dead 2026-03-04 with M1 {
        at S1  L-E 0.16 Ω
      }
    }
    way 2 feeder { feeds B }
  }
  board B {
    fed-from  A
  }
}
`,
  "names in a file without an installation are not looked for":
    "wayfile 1\nboard A {\n  way 1 radial {\n    behind west\n  }\n}\n",
};

export const sound = { lines, files };
