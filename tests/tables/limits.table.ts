import { capacity4D1A, capacity4D2A, capacity4D4A, capacity4D5 } from "../../server/tables/capacity-70.ts";
import { capacity4E1A, capacity4E4A } from "../../server/tables/capacity-90.ts";
import { conductorResistance, pairResistance } from "../../server/tables/conductors.ts";
import { conduitRuns } from "../../server/tables/conduit-runs.ts";
import { conduitCables, trunkingSizes } from "../../server/tables/containment.ts";
import { disconnectionTimes } from "../../server/tables/disconnection.ts";
import { drop4D1B, drop4D2B, drop4E1B } from "../../server/tables/drop.ts";
import { ambientFactors, groupingFactors, thermalInsulationFactors } from "../../server/tables/factors.ts";
import { insulationMinima } from "../../server/tables/insulation.ts";
import { breakerLoop, breakerLoopD5s } from "../../server/tables/loop-breakers.ts";
import { bs1361Loop, fuseLoop5, fuseLoop04, fuseLoop2008 } from "../../server/tables/loop-fuses.ts";
import { rcdLoop } from "../../server/tables/loop-rcd.ts";
import { minimumSizes } from "../../server/tables/protective.ts";
import { rcdBands, rcdTimes } from "../../server/tables/rcd.ts";
import type { Printed } from "./printed.ts";

/**
 * Each key table again, as a compact list made apart from it: what the printed table says, and after each number how it
 * is known (C a public page states it, = by formula, M from memory). A dash is an empty cell. Cell for cell they must
 * agree, so that neither a number nor its standing changes unnoticed. The pages are named under `seen` of each table.
 */
export const limits: readonly Printed[] = [
  [
    breakerLoop,
    "curve rating Ia zs gn3 strict osg zsCmin1",
    `
      B 3= 15= 14.57= 11.66= 11.65= 11.75= 15.33=
      B 6C 30C 7.28C 5.82C 5.82= 5.87C 7.67C
      B 10= 50= 4.37= 3.5= 3.49= 3.52= 4.6=
      B 16= 80= 2.73= 2.18= 2.18= 2.2= 2.87C
      B 20= 100= 2.19= 1.75= 1.74= 1.76= 2.3=
      B 25= 125= 1.75= 1.4= 1.39= 1.41= 1.84=
      B 32C 160C 1.37C 1.1= 1.09= 1.1= 1.44=
      B 40= 200= 1.09= 0.87= 0.87= 0.88= 1.15=
      B 45C 225C 0.97C 0.78= 0.77= 0.78= 1.02=
      B 50= 250= 0.87= 0.7= 0.69= 0.7= 0.92=
      B 63= 315= 0.69= 0.55= 0.55= 0.56= 0.73=
      B 80= 400= 0.55= 0.44= 0.43= 0.44= 0.57C
      B 100= 500= 0.44= 0.35= 0.34= 0.35= 0.46=
      B 125= 625= 0.35= 0.28= 0.27= 0.28= 0.37=
      C 3= 30= 7.28= 5.82= 5.82= 5.87= 7.67=
      C 6= 60= 3.64= 2.91= 2.91= 2.94= 3.83=
      C 10= 100= 2.19= 1.75= 1.74= 1.76= 2.3=
      C 16= 160= 1.37= 1.1= 1.09= 1.1= 1.44=
      C 20= 200= 1.09= 0.87= 0.87= 0.88= 1.15=
      C 25= 250= 0.87= 0.7= 0.69= 0.7= 0.92=
      C 32= 320= 0.68= 0.54= 0.54= 0.55= 0.72=
      C 40= 400= 0.55= 0.44= 0.43= 0.44= 0.57C
      C 45= 450= 0.49= 0.39= 0.38= 0.39= 0.51=
      C 50= 500= 0.44= 0.35= 0.34= 0.35= 0.46=
      C 63= 630= 0.35= 0.28= 0.27= 0.28= 0.36C
      C 80= 800= 0.27= 0.22= 0.21= 0.22= 0.29=
      C 100= 1000= 0.22= 0.18= 0.17= 0.18= 0.23=
      C 125= 1250= 0.17= 0.14= 0.13= 0.14= 0.18=
      D 3= 60= 3.64= 2.91= 2.91= 2.94= 3.83=
      D 6C 120C 1.82C 1.46C 1.45= 1.47= 1.92=
      D 10= 200= 1.09= 0.87= 0.87= 0.88= 1.15=
      D 16= 320= 0.68= 0.54= 0.54= 0.55= 0.72=
      D 20= 400= 0.55= 0.44= 0.43= 0.44= 0.57C
      D 25C 500C 0.44C 0.35= 0.34= 0.35= 0.46=
      D 32= 640= 0.34= 0.27= 0.27= 0.28= 0.36=
      D 40= 800= 0.27= 0.22= 0.21= 0.22= 0.29=
      D 45= 900= 0.24= 0.19= 0.19= 0.2= 0.26=
      D 50= 1000= 0.22= 0.18= 0.17= 0.18= 0.23=
      D 63= 1260= 0.17= 0.14= 0.13= 0.14= 0.18=
      D 80= 1600= 0.14= 0.11= 0.1= 0.11= 0.14=
      D 100= 2000= 0.11= 0.09= 0.08= 0.09= 0.11C
      D 125= 2500= 0.09= 0.07= 0.06= 0.07= 0.09=`,
  ],
  [
    breakerLoopD5s,
    "curve rating zs",
    `
      D 6M 3.64M
      D 10M 2.19M
      D 16M 1.37M
      D 20M 1.09M
      D 25M 0.87M
      D 32M 0.68M
      D 40M 0.55M
      D 50M 0.44M
      D 63M 0.35M
      D 80M 0.27M
      D 100M 0.22M
      D 125M 0.17M`,
  ],
  [
    fuseLoop04,
    "standard rating Ia zs strict zsCmin1",
    `
      BS-88-2 2M - 33.1M 26.48M -
      BS-88-2 4M - 15.6M 12.48M -
      BS-88-2 6= 28= 7.8= 6.24= 8.21C
      BS-88-2 10= 47= 4.65= 3.71= 4.89C
      BS-88-2 16= 90= 2.43= 1.94= 2.56C
      BS-88-2 20= 130= 1.68= 1.34= 1.77C
      BS-88-2 25= 170= 1.29= 1.02= 1.35C
      BS-88-2 32= 220= 0.99= 0.79= 1.04C
      BS-88-2 40M 290M 0.75M 0.6M -
      BS-88-2 50M 380M 0.58M 0.46M -
      BS-88-2 63M 500M 0.44M 0.35M -
      BS-88-3 5= 22M 9.93= 7.94= 10.45C
      BS-88-3 16= 95M 2.3= 1.84= 2.42C
      BS-88-3 20= 113C 1.93= 1.54= 2.04C
      BS-88-3 32= 240M 0.91= 0.72C 0.96C
      BS-88-3 45M - - - -
      BS-88-3 63M - - - -
      BS-3036 5= 24M 9.1= 7.28= 9.58C
      BS-3036 15= 90M 2.43= 1.94= 2.55C
      BS-3036 20= 130M 1.68= 1.34= 1.77C
      BS-3036 30= 210M 1.04= 0.83= 1.09C
      BS-3036 45M - - - -
      BS-3036 60M - - - -
      BS-1362 3= 14M 15.6= 12.48= 16.4C
      BS-1362 13= 95M 2.3= 1.84= 2.42C`,
  ],
  [
    fuseLoop5,
    "standard rating zs strict zsCmin1",
    `
      BS-88-2 2M 44M 35.2M -
      BS-88-2 4M 21M 16.8M -
      BS-88-2 6= 12= 9.6= 12.8C
      BS-88-2 10= 6.8= 5.44= 7.19C
      BS-88-2 16= 4= 3.2= 4.18C
      BS-88-2 20= 2.8= 2.24= 2.95C
      BS-88-2 25= 2.2= 1.76= 2.3C
      BS-88-2 32= 1.7= 1.36= 1.84C
      BS-88-2 40= 1.3= 1.04= 1.35C
      BS-88-2 50= 0.99= 0.79= 1.04C
      BS-88-2 63= 0.78= 0.62= 0.82C
      BS-88-2 80= 0.55= 0.44= 0.57C
      BS-88-2 100= 0.44= 0.35= 0.46C
      BS-88-2 125= 0.32= 0.25= 0.34C
      BS-88-2 160= 0.27= 0.21= 0.28C
      BS-88-2 200= 0.18= 0.14= 0.19C
      BS-88-3 5= 14.6= 11.68= 15.33C
      BS-88-3 16= 3.9= 3.12= 4.11C
      BS-88-3 20= 3.2= 2.56= 3.38C
      BS-88-3 32= 1.6= 1.28= 1.64C
      BS-88-3 45M 1M 0.8M 1.04C
      BS-88-3 63= 0.68= 0.54= 0.72C
      BS-88-3 80= 0.51= 0.4= 0.53C
      BS-88-3 100C 0.38C 0.3= 0.4C
      BS-3036 5= 16.8= 13.44= 17.7C
      BS-3036 15= 5.08= 4.06= 5.35C
      BS-3036 20= 3.64= 2.91= 3.83C
      BS-3036 30= 2.51= 2= 2.64C
      BS-3036 45= 1.51= 1.2= 1.59C
      BS-3036 60= 1.07= 0.85= 1.12C
      BS-3036 100= 0.5= 0.4= 0.53C
      BS-1362 3= 22= 17.6= 23.2C
      BS-1362 13= 3.64= 2.91= 3.83C`,
  ],
  [
    bs1361Loop,
    "rating zs04 zs5 zs04Cmin zs5Cmin",
    `
      5C 10.45C 16.4C 9.92= 15.58=
      15C 3.28C 5C 3.11= 4.75=
      20C 1.7C 2.8C 1.61= 2.66=
      30C 1.15C 1.84C 1.09= 1.74=
      45C - 0.96C - 0.91=
      60C - 0.7C - 0.66=
      80C - 0.5C - 0.47=
      100C - 0.36C - 0.34=`,
  ],
  [
    fuseLoop2008,
    "rating zs04 zs5",
    `
      6C 8.52C 13.5C
      10C 5.11C 7.42C
      16C 2.7C 4.18C
      20C 1.77C 2.91C
      25C 1.44C 2.3C
      32C 1.04C 1.84C
      40C - 1.35C
      50C - 1.04C
      63C - 0.82C
      80C - 0.57C
      100C - 0.42C
      125C - 0.33C
      160C - 0.25C
      200C - 0.19C`,
  ],
  [
    rcdLoop,
    "residual zs zsHigherBand",
    `
      10= 5000= -
      30C 1667C 1533C
      100C 500C -
      300= 167= -
      500= 100= -
      - 200C -`,
  ],
  [
    conductorResistance,
    "csa copper2 copper1 copper5 aluminium2",
    `
      0.5C 36C 36C 39C -
      0.75C 24.5C 24.5C 26C -
      1C 18.1C 18.1C 19.5C -
      1.5C 12.1C 12.1C 13.3C -
      2.5C 7.41C 7.41C 7.98C -
      4C 4.61C 4.61C 4.95C -
      6C 3.08C 3.08C 3.3C -
      10C 1.83C 1.83C 1.91C 3.08C
      16C 1.15C 1.15C 1.21C 1.91C
      25C 0.727C 0.727C 0.78C 1.2C
      35C 0.524C 0.524C 0.554C 0.868C
      50C 0.387C 0.387C 0.386C 0.641C
      70C 0.268C 0.268C 0.272C 0.443C
      95C 0.193C 0.193C 0.206C 0.32C
      120C 0.153C 0.153C 0.161C 0.253C
      150C 0.124C 0.124C 0.129C 0.206C
      185C 0.0991C 0.101C 0.106C 0.164C
      240C 0.0754C 0.0775C 0.0801C 0.125C
      300C 0.0601C 0.062C 0.0641C 0.1C
      400C 0.047C 0.0465C 0.0486C 0.0778C`,
  ],
  [
    pairResistance,
    "line cpc r1r2",
    `
      1= 1= 36.2=
      1.5C 1C 30.2C
      1.5C 1.5C 24.2C
      2.5= 1= 25.51=
      2.5C 1.5C 19.51C
      2.5C 2.5C 14.82C
      4C 1.5C 16.71C
      4= 2.5= 12.02=
      4C 4C 9.22C
      6C 2.5C 10.49C
      6= 4= 7.69=
      6C 6C 6.16C
      10C 4C 6.44C
      10= 6= 4.91=
      10C 10C 3.66C
      16C 6C 4.23C
      16= 10= 2.98=
      16C 16C 2.3C
      25= 10= 2.557=
      25= 16= 1.877=
      25C 25C 1.454C
      35= 16= 1.674=
      35= 25= 1.251=
      35C 35C 1.048C
      50= 25= 1.114=
      50= 35= 0.911=
      50C 50C 0.774C`,
  ],
  [
    capacity4D1A,
    "csa A2 A3 B2 B3 C2 C3",
    `
      1C 11C 10.5C 13.5C 12C 15.5C 14C
      1.5C 14.5C 13.5C 17.5C 15.5C 20C 18C
      2.5C 20C 18C 24C 21C 27C 25C
      4C 26C 24C 32C 28C 37C 33C
      6C 34C 31C 41C 36C 47C 43C
      10C 46C 42C 57C 50C 65C 59C
      16C 61C 56C 76C 68C 87C 79C
      25C 80C 73C 101C 89C 114C 104C
      35C 99C 89C 125C 110C 141C 129C
      50C 119C 108C 151C 134C 182C 167C
      70C 151C 136C 192C 171C 234C 214C
      95C 182C 164C 232C 207C 284C 261C
      120C 210C 188C 269C 239C 330C 303C
      150C 240C 216C 300C 262C 381C 349C
      185C 273C 245C 341C 296C 436C 400C
      240C 320C 286C 400C 346C 515C 472C
      300C 367C 328C 458C 394C 594C 545C`,
  ],
  [
    capacity4D2A,
    "csa A2 A3 B2 B3 C2 C3 E2 E3",
    `
      1M 11M 10M 13C 11.5M 15M 13.5M 17M 14.5M
      1.5M 14M 13M 16.5C 15M 19.5M 17.5M 22M 18.5M
      2.5M 18.5M 17.5M 23M 20M 27M 24M 30M 25M
      4M 25M 23M 30M 27C 36M 32M 40M 34M
      6M 32C 29M 38C 34C 46C 41M 51M 43M
      10M 43C 39M 52C 46C 63C 57M 70M 60M
      16M 57C 52M 69C 62C 85C 76M 94M 80M
      25M 75M 68M 90M 80C 112M 96M 119M 101M
      35M 92M 83M 111M 99C 138M 119M 148M 126M
      50M 110M 99M 133M 118C 168M 144M 180M 153M
      70M 139M 125M 168M 149C 213M 184M 232M 196M
      95M 167M 150M 201M 179C 258M 223M 282M 238M
      120M 192M 172M 232M 206C 299M 259M 328M 276M`,
  ],
  [
    capacity4D5,
    "csa m100 m101 m102 m103 A C drop",
    `
      1C 13C 10.5C 13C 8C 11.5C 16C 44C
      1.5C 16C 13C 16C 10C 14.5C 20C 29C
      2.5M 21M 17C 21M 13.5M 20M 27M 18C
      4M 27M 22M 27M 17.5M 26M 37M 11C
      6M 34M 27M 35M 23.5M 32M 47C 7.3C
      10M 45C 36M 47M 32M 44M 64C 4.4C
      16M 57C 46M 63M 42.5M 57M 85C 2.8C`,
  ],
  [
    capacity4D4A,
    "csa C2 C3 D2 D3 E2 E3",
    `
      1.5C 21C 18C 22M 18M 22C 19C
      2.5C 28C 25C 29M 24M 31C 26C
      4C 38C 33C 37M 30M 41C 35C
      6C 49C 42C 46M 38M 53C 45C
      10C 67C 58C 60M 50M 72C 62C
      16C 89C 77C 78M 64M 97C 83C
      25C 118C 102C 99M 82M 128C 110C
      35C 145C 125C 119M 98M 157C 135C
      50C 175C 151C 140M 116M 190C 163C
      70C 222C 192C 173M 143M 241C 207C
      95C 269C 231C 204M 169M 291C 251C
      120C 310C 267C 231M 192M 336C 290C
      150C 356C 306C 261M 217M 386C 332C
      185C 405C 348C 292M 243M 439C 378C
      240C 476C 409C 336M 280M 516C 445C
      300C 547C 469C 379M 316M 592C 510C`,
  ],
  [
    capacity4E4A,
    "csa C2 C3 D2 D3 E2 E3",
    `
      1.5C 27C 23C 25C 21C 29C 25C
      2.5C 36C 31C 33C 28C 39C 33C
      4C 49C 42C 43C 36C 52C 44C
      6C 62C 53C 53C 44C 66C 56C
      10C 85C 73C 71C 58C 90C 78C
      16C 110C 94C 91C 75C 115C 99C
      25C 146C 124C 116C 96C 152C 131C
      35C 180C 154C 139C 115C 188C 162C
      50C 219C 187C 164C 135C 228C 197C
      70C 279C 238C 203C 167C 291C 251C
      95C 338C 289C 239C 197C 354C 304C
      120C 392C 335C 271C 223C 410C 353C
      150C 451C 386C 306C 251C 472C 406C
      185C 515C 441C 343C 281C 539C 463C
      240C 607C 520C 395C 324C 636C 546C
      300C 698C 599C 446C 365C 732C 628C
      400C 787C 673C - - 847C 728C`,
  ],
  [
    capacity4E1A,
    "csa A2 A3 B2 B3 C2 C3",
    `
      1C 14C 13C 17C 15C 19C 17.5C
      1.5C 19C 17C 23C 20C 25C 23C
      2.5C 26C 23C 31C 28C 34C 31C
      4C 35C 31C 42C 37C 46C 41C
      6C 45C 40C 54C 48C 59C 54C
      10C 61C 54C 75C 66C 81C 74C
      16C 81C 73C 100C 88C 109C 99C
      25C 106C 95C 133C 117C 143C 130C
      35C 131C 117C 164C 144C 176C 161C
      50C 158C 141C 198C 175C 228C 209C
      70C 200C 179C 253C 222C 293C 268C
      95C 241C 216C 306C 269C 355C 326C
      120C 278C 249C 354C 312C 413C 379C
      150C 318C 285C 393C 342C 476C 436C
      185C 362C 324C 449C 384C 545C 500C
      240C 424C 380C 528C 450C 644C 590C
      300C 486C 435C 603C 514C 743C 681C`,
  ],
  [
    ambientFactors,
    "temperature at70 at90",
    `
      25C 1.03C 1.02M
      30C 1C 1=
      35C 0.94C 0.96=
      40C 0.87C 0.91=
      45C 0.79C 0.87=
      50C 0.71C 0.82=
      55C 0.61C 0.76=
      60= 0.5= 0.71=`,
  ],
  [
    groupingFactors,
    "n1 n2 n3 n4 n5 n6 n7 n8 n9 n12 n16 n20",
    `
      1C 0.8C 0.7C 0.65C 0.6C 0.57C 0.54C 0.52C 0.5C 0.45C 0.41C 0.38C
      1C 0.85C 0.79C 0.75C 0.73C 0.72C 0.72C 0.71C 0.7C 0.7C 0.7C 0.7C
      1C 0.88C 0.82C 0.77C 0.75C 0.73C 0.73C 0.72C 0.72C 0.72C 0.72C 0.72C
      1C 0.87C 0.82C 0.8C 0.8C 0.79C 0.79C 0.78C 0.78C 0.78C 0.78C 0.78C`,
  ],
  [
    thermalInsulationFactors,
    "length factor",
    `
      50M 0.88M
      100M 0.78M
      200M 0.63M
      400M 0.51M
      500C 0.5C`,
  ],
  [
    rcdTimes,
    "times1 times2 times5 least1 least2 least5",
    `
      300C 150C 40C - - -
      500C 200C 150C 130C 60M 50C
      200C - 40C - - -`,
  ],
  [
    rcdBands,
    "low high",
    `
      50C 100C
      35C 140C
      35C 200C
      50M 200M
      50C -`,
  ],
  [
    insulationMinima,
    "testVoltage minimum",
    `
      250C 0.5C
      500C 1C
      1000C 1C`,
  ],
  [
    disconnectionTimes,
    "system over upTo ac dc",
    `
      TN 50C 120C 0.8C -
      TN 120C 230C 0.4C 5C
      TN 230C 400C 0.2C 0.4C
      TN 400C - 0.1C 0.1C
      TT 50C 120C 0.3C -
      TT 120C 230C 0.2C 0.4C
      TT 230C 400C 0.07C 0.2C
      TT 400C - 0.04C 0.1C`,
  ],
  [
    drop4D1B,
    "csa dc phase1AB phase1CF phase3AB phase3CF",
    `
      1C 44C 44C 44C 38C 38C
      1.5C 29C 29C 29C 25C 25C
      2.5C 18C 18C 18C 15C 15C
      4C 11C 11C 11C 9.5C 9.5C
      6C 7.3C 7.3C 7.3C 6.4C 6.4C
      10C 4.4C 4.4C 4.4C 3.8C 3.8C
      16C 2.8C 2.8C 2.8C 2.4C 2.4C
      25C 1.75C 1.8C 1.75C 1.55C 1.5C
      35C 1.25C 1.3C 1.25C 1.1C 1.1C
      50C 0.93C 1C 0.95C 0.85C 0.82C
      70C 0.63C 0.72C 0.66C 0.61C 0.57C
      95C 0.46C 0.56C 0.5C 0.48C 0.43C
      120C 0.36C 0.47C 0.41C 0.41C 0.36C
      150C 0.29C 0.41C 0.34C 0.36C 0.3C
      185C 0.23C 0.37C 0.29C 0.32C 0.26C
      240C 0.18C 0.33C 0.25C 0.29C 0.22C`,
  ],
  [
    drop4D2B,
    "csa phase1 phase3",
    `
      1C 44C 38C
      1.5C 29C 25C
      2.5C 18C 15C
      4C 11C 9.5C
      6C 7.3C 6.4C
      10C 4.4C 3.8C
      16C 2.8C 2.4C
      25M 1.75M 1.5M
      35M 1.25M 1.1M`,
  ],
  [
    drop4E1B,
    "csa phase1 phase3",
    `
      1C 46C -
      1.5C 31C 27C
      2.5C 19C 16C
      4C 12C 10C
      6C 7.9C 6.8C
      10C 4.7C 4C
      16C 2.9C 2.5C`,
  ],
  [
    minimumSizes,
    "copper",
    `
      1M
      1.5M
      0.5M
      0.5M
      10M`,
  ],
  [
    trunkingSizes,
    "width depth factor",
    `
      50C 37.5C 767C
      50C 50C 1037C
      75C 25C 738C
      75C 37.5C 1146C
      75C 50C 1555C
      75C 75C 2371C
      100C 50C 2091C
      100C 75C 3189C
      100C 100C 4252C
      150C 50C 3091C
      150C 75C 4743C
      150C 100C 6394C
      150C 150C 9697C
      200C 100C 8572C
      225C 50C 4671C
      225C 75C 7167C
      225C 100C 9662C
      225C 150C 14652C
      300C 50C 6251C
      300C 75C 9590C
      300C 100C 12929C
      300C 150C 19607C
      100M 25M 993M`,
  ],
  [
    conduitCables,
    "csa factor",
    `
      1C 16C
      1.5C 22C
      2.5C 30C
      4C 43C
      6C 58C
      10C 105C
      16C 145C
      25C 217C`,
  ],
  [
    conduitRuns,
    "length bends d16 d20 d25 d32",
    `
      3.5C 0C 179C 290C 521C 911C
      4C 0C 177C 286C 514C 900C
      4.5C 0C 174C 282C 507C 889C
      5C 0C 171C 278C 500C 878C
      6C 0C 167C 270C 487C 857C
      7C 0C 162C 263C 475C 837C
      8C 0C 158C 256C 463C 818C
      9C 0C 154C 250C 452C 800C
      10C 0C 150C 244C 442C 783C
      1C 1C 188C 303C 543C 947C
      1.5C 1C 182C 294C 528C 923C
      2C 1C 177C 286C 514C 900C
      2.5C 1C 171C 278C 500C 878C
      3C 1C 167C 270C 487C 857C
      3.5C 1C 162C 263C 475C 837C
      4C 1C 158C 256C 463C 818C
      4.5C 1C 154C 250C 452C 800C
      5C 1C 150C 244C 442C 783C
      6C 1C 143C 233C 422C 750C
      7C 1C 136C 222C 404C 720C
      8C 1C 130C 213C 388C 692C
      9C 1C 125C 204C 373C 667C
      10C 1C 120C 196C 358= 643C
      1C 2C 177C 286C 514C 900C
      1.5C 2C 167C 270C 487C 857=
      2C 2C 158C 256C 463C 818=
      2.5C 2C 150C 244C 442C 783=
      3C 2C 143C 233C 422C 750=
      3.5C 2C 136C 222C 404C 720=
      4C 2C 130C 213C 388C 692=
      4.5C 2C 125C 204C 373C 667=
      5C 2C 120C 196C 358C 643=
      6C 2C 111C 182C 333C 600M
      7C 2C 103C 169C 311C 563M
      8C 2C 97C 159C 292C 529M
      9C 2C 91C 149C 275C 500M
      10C 2C 86C 141C 260= 474M
      1C 3C 158C 256C 463C 818C
      1.5= 3= 143= 233= 422= 750=
      2= 3= 130= 213= 388= 692=
      2.5= 3= 120= 196= 358= 643=
      3= 3= 111= 182= 333= 600M
      3.5= 3= 103= 169= 311= 563M
      4= 3= 97= 159= 292= 529M
      4.5= 3= 91= 149= 275= 500M
      5= 3= 86= 141C 260C 474M
      1C 4C 130C 213C 388C 692C
      1.5= 4= 111= 182= 333= 600M
      2= 4= 97= 159= 292= 529M
      2.5= 4= 86= 141= 260= 474M`,
  ],
];
