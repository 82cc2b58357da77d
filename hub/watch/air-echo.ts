import type { Alarm, AlarmKind, Finding } from '../contract/alarm.ts';

/**
 * One trouble, one alarm: while the level of the instant already says that everyone has to leave, a mean, a dose or an
 * estimate about the same gas would say it again. It is told when that alarm ends and it still holds: the danger is
 * never told later for it, nor let go of sooner. What was told before stays, so that nothing is passed off as over.
 */

const LOUDEST: readonly AlarmKind[] = ['unsafe-air-idlh', 'unsafe-air-second'];
const ECHOES: readonly AlarmKind[] = [
  'unsafe-air-ceiling',
  'unsafe-air-dose',
  'unsafe-air-short-mean',
  'unsafe-air-blood',
  'unsafe-air-day-mean',
];

/** Findings without those that only echo a louder one about carbon monoxide. `open`: the alarms that stand. */
export function withoutEchoes(
  findings: readonly Finding[],
  open: readonly Pick<Alarm, 'kind' | 'active'>[],
): readonly Finding[] {
  if (!findings.some(({ kind }) => LOUDEST.includes(kind))) return findings;
  const stands = (kind: AlarmKind) => open.some((alarm) => alarm.kind === kind && alarm.active);
  return findings.filter(({ kind }) => !ECHOES.includes(kind) || stands(kind));
}
