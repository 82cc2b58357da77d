/**
 * Calibration of the forecast over simulated firings. Run with
 * `node --import tsx tests/bench/forecast-report/report.ts`; it takes some minutes and asserts nothing.
 *
 * The model's figures were fitted on the first seeds; the second ones were never looked at while fitting.
 */
import { badWish, CASES, countsGood, goodWish } from './cases.ts';
import { addCoverage, type Coverage, HORIZONS, heldShare, summed, type Tally } from './coverage.ts';
import { fire, PUBLISHING } from './firings.ts';
import { knowableSeconds, leadSeconds, type WarningOutcome, watch } from './warnings.ts';

const SEEDS = {
  'fitted on': [1, 2, 3, 4, 5, 6, 7, 8],
  'held out': [101, 102, 103, 104, 105, 106, 107, 108, 109, 110],
} as const;

interface Pair {
  /** Null where the same good firing is counted in another case already. */
  readonly good: WarningOutcome | null;
  readonly late: WarningOutcome;
  readonly knowable: number | null;
}

function runSeed(seed: number, coverage: Coverage, pairs: Map<string, Pair[]>): void {
  const how = PUBLISHING[seed % PUBLISHING.length] ?? PUBLISHING[0];
  if (how === undefined) throw new Error('no way of publishing');
  for (const one of CASES) {
    const good = fire(goodWish(one, seed));
    const late = fire(badWish(one, seed));
    const isNew = countsGood(one);
    for (const firing of isNew ? [good, late] : [late]) {
      addCoverage(coverage, firing, how, 20);
    }
    const outcome = watch(late, how);
    const pair = {
      good: isNew ? watch(good, how) : null,
      late: outcome,
      knowable: knowableSeconds(outcome, good),
    };
    pairs.set(one.name, [...(pairs.get(one.name) ?? []), pair]);
  }
}

function cell(tally: Tally): string {
  if (tally.tries === 0) return '-'.padEnd(26);
  const share = (100 * heldShare(tally)).toFixed(0);
  const width = (tally.width / tally.tries).toFixed(1);
  const miss = (tally.miss / tally.tries).toFixed(1);
  return `${share} %  w ${width}  miss ${miss}`.padEnd(26);
}

function printCoverage(coverage: Coverage): void {
  console.log(`Share of truths inside the 80 % band, mean width of the band, mean miss of the mean (°C)`);
  console.log(`${''.padEnd(30)}${HORIZONS.map((h) => `${h} s`.padEnd(26)).join('')}`);
  const row = (name: string, pattern: RegExp) =>
    console.log(`${name.padEnd(30)}${summed(coverage, pattern).map(cell).join('')}`);
  row('heated, all', / heated$/);
  for (const key of [...coverage.keys()].sort((a, b) => a.localeCompare(b))) row(key, new RegExp(`^${key}$`));
}

const ordered = (values: readonly (number | null)[]): number[] =>
  values.filter((value) => value !== null).sort((a, b) => a - b);

function spread(values: readonly (number | null)[]): string {
  const all = ordered(values);
  if (all.length === 0) return '-';
  return `${all[0]} / ${all[Math.floor(all.length / 2)]} / ${all.at(-1)}`;
}

function printWarnings(name: string, pairs: readonly Pair[]): void {
  const over = pairs.filter(({ late }) => late.overAtMs !== null);
  const leads = over.map(({ late }) => leadSeconds(late));
  const inTime = leads.filter((lead) => lead !== null && lead >= 60).length;
  const possible = over.filter(({ knowable }) => knowable !== null && knowable >= 60).length;
  const good = pairs.flatMap((pair) => pair.good ?? []).filter(({ overAtMs }) => overAtMs === null);
  const wrong = good.filter(({ warnedAtMs }) => warnedAtMs !== null).length;
  const delays = over.map(({ late, knowable }) => {
    const lead = leadSeconds(late);
    return lead === null || knowable === null ? null : knowable - lead;
  });
  console.log(
    `${name.padEnd(26)} overshot ${over.length}  warned ${ordered(leads).length}  60 s ahead ${inTime} ` +
      `(possible in ${possible})  false ${wrong} of ${good.length} good`,
  );
  console.log(`${''.padEnd(26)} seconds, least / median / most: ahead ${spread(leads)}`);
  console.log(
    `${''.padEnd(26)}   knowable before the limit ${spread(over.map(({ knowable }) => knowable))}  warned after that ${spread(delays)}`,
  );
}

console.log(`Node ${process.version}, ${process.platform} ${process.arch}`);
for (const [name, seeds] of Object.entries(SEEDS)) {
  const coverage: Coverage = new Map();
  const pairs = new Map<string, Pair[]>();
  for (const seed of seeds) runSeed(seed, coverage, pairs);
  console.log(`\n== seeds ${name}: ${seeds.join(', ')}\n`);
  printCoverage(coverage);
  console.log('\nOvershoot: warned when about as likely as not within two minutes');
  for (const [plan, list] of pairs) printWarnings(plan, list);
  printWarnings('all', [...pairs.values()].flat());
}
