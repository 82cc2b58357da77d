/**
 * The same question put to the judge itself: how long ahead it raises an overshoot, how often for nothing, and how
 * often the 80 % band that the wall draws holds the truth. Run with
 * `node --import tsx tests/bench/forecast-report/judged.ts [seeds]`; it takes some minutes and asserts nothing.
 */
import { badWish, CASES, type Case, countsGood, goodWish } from './cases.ts';
import { HORIZONS } from './coverage.ts';
import { fire } from './firings.ts';
import { type Judged, judge } from './judge-firing.ts';
import { firstDifferenceMs } from './warnings.ts';

interface Pair {
  readonly good: Judged | null;
  readonly bad: Judged;
  /** Seconds from the first difference to the good firing of the same seed until the limit. */
  readonly knowable: number | null;
}

const leadOf = ({ overAtMs, warnedAtMs }: Judged): number | null =>
  overAtMs === null || warnedAtMs === null || warnedAtMs >= overAtMs ? null : (overAtMs - warnedAtMs) / 1000;

function run(one: Case, seed: number): Pair {
  const good = fire(goodWish(one, seed));
  const bad = fire(badWish(one, seed));
  const judged = judge(bad, seed);
  const partedMs = firstDifferenceMs(bad, good);
  const knowable = judged.overAtMs === null || partedMs === null ? null : (judged.overAtMs - partedMs) / 1000;
  return { good: countsGood(one) ? judge(good, seed) : null, bad: judged, knowable };
}

function spread(values: readonly (number | null)[]): string {
  const all = values.filter((value) => value !== null).sort((a, b) => a - b);
  return all.length === 0 ? '-' : `${all[0]} / ${all[all.length >> 1]} / ${all.at(-1)}`;
}

function print(name: string, pairs: readonly Pair[]): void {
  const over = pairs.filter(({ bad }) => bad.overAtMs !== null);
  const leads = over.map(({ bad }) => leadOf(bad));
  const inTime = leads.filter((lead) => lead !== null && lead >= 60).length;
  const warned = leads.filter((lead) => lead !== null).length;
  const good = pairs.flatMap((pair) => pair.good ?? []).filter(({ overAtMs }) => overAtMs === null);
  const wrong = good.filter(({ warnedAtMs }) => warnedAtMs !== null).length;
  console.log(
    `${name.padEnd(26)} overshot ${over.length}  warned ${warned}  60 s ahead ${inTime}  ` +
      `false ${wrong} of ${good.length} good`,
  );
  const knowable = over.map((pair) => pair.knowable);
  console.log(
    `${''.padEnd(26)} seconds, least / median / most: ahead ${spread(leads)}  knowable ${spread(knowable)}`,
  );
}

function printBands(pairs: readonly Pair[]): void {
  const all = pairs.flatMap(({ good, bad }) => (good === null ? [bad] : [good, bad]));
  const cells = HORIZONS.map((horizon, i) => {
    const held = all.reduce((sum, one) => sum + (one.held[i] ?? 0), 0);
    const tried = all.reduce((sum, one) => sum + (one.tried[i] ?? 0), 0);
    return `${horizon} s: ${((100 * held) / tried).toFixed(0)} % of ${tried}`;
  });
  console.log(`the 80 % band held the truth: ${cells.join('; ')}`);
}

const seeds = Number(process.argv[2] ?? 10);
console.log(`Node ${process.version}, ${process.platform} ${process.arch}; seeds 101 to ${100 + seeds}`);
const all: Pair[] = [];
for (const one of CASES) {
  const pairs = Array.from({ length: seeds }, (_, i) => run(one, 101 + i));
  print(one.name, pairs);
  all.push(...pairs);
}
print('all', all);
printBands(all);
