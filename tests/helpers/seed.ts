/**
 * One seed for every property that names none, so that a run can be repeated. `npm run hunt` takes a fresh one and
 * prints it; what it finds becomes a case of its own.
 */
import fc from "fast-check";

const fixed = 20_261_129;
const wanted = process.env.WAYFILE_SEED;
const seed = wanted === undefined ? fixed : wanted === "fresh" ? Date.now() % 2 ** 31 : Number(wanted);
if (wanted === "fresh") console.log(`seed ${seed}`);
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed });
